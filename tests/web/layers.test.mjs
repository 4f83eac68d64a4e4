// Arrows point down only: web -> shell -> core. In the native build a wrong include does not compile with the targets'
// own include paths; in both builds the compiler's lists of what each object was made from hold nothing from above.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const native = path.join(root, 'build/native');
const wasm = path.join(root, 'build/wasm');

/// The command by which the native build compiles a folder's sources, up to where it names one of them.
function compile_command(folder) {
  const commands = JSON.parse(readFileSync(path.join(native, 'compile_commands.json'), 'utf8'));
  const entry = commands.find((command) => command.file.startsWith(path.join(root, folder) + path.sep));
  assert.ok(entry, `the native build compiles nothing in ${folder}`);
  return entry.command.slice(0, entry.command.lastIndexOf(' -o '));
}

/// Whether some lines of C++ compile as if they stood in that folder.
function compiles(folder, text) {
  const command = `${compile_command(folder)} -fsyntax-only -x c++ -`;
  return spawnSync('sh', ['-c', command], { cwd: native, input: `${text}\n` }).status === 0;
}

/// Every file that the objects of a folder's target were made from: {object: [file...]}.
function made_from(build, folder) {
  const text = execFileSync('ninja', ['-C', build, '-t', 'deps'], { encoding: 'utf8', maxBuffer: 1 << 28 });
  const lists = {};
  let object = null;
  for (const line of text.split('\n')) {
    const head = /^(\S+): #deps \d+, .*\(VALID\)$/.exec(line);
    if (head) object = head[1].startsWith(`${folder}/CMakeFiles/${folder}.dir/`) ? head[1] : null;
    else if (object && line.startsWith('    ')) (lists[object] ??= []).push(path.resolve(build, line.trim()));
  }
  return lists;
}

const reach = {
  core: {
    may: ['"core/base/check.h"', '<GeographicLib/Geodesic.hpp>', '<vector>'],
    must_not: ['"imgui.h"', '"imgui_impl_opengl3.h"', '"shell/CMakeLists.txt"', '"web/CMakeLists.txt"', '<emscripten/emscripten.h>'],
  },
  shell: {
    may: ['"shell/platform.h"', '"core/base/check.h"', '"imgui.h"', '<vector>'],
    must_not: ['<GeographicLib/Geodesic.hpp>', '"imgui_impl_opengl3.h"', '"web/CMakeLists.txt"', '<emscripten/emscripten.h>', '<emscripten/html5.h>'],
  },
};

for (const [folder, { may, must_not }] of Object.entries(reach)) {
  for (const include of may) {
    test(`natively ${folder} compiles with ${include}`, () => assert.equal(compiles(folder, `#include ${include}`), true));
  }
  for (const include of must_not) {
    test(`natively ${folder} does not compile with ${include}`, () => {
      assert.equal(compiles(folder, `#include ${include}`), false);
      // Nor is it merely found and unfit to compile.
      assert.equal(compiles(folder, `#if __has_include(${include})\n#error\n#endif`), true, `${include} is within reach of ${folder}`);
    });
  }
}

// What Debian keeps among the system's own headers is within reach of all: that core is made from none of it shows here alone.
// Emscripten's own headers lie in include/emscripten of its system root, where the C library's lie beside them.
const from_above = {
  core: [/\/include\/emscripten\//, /\/(GLES\d?|EGL|GL)\//, /imgui/, /\/expat\w*\.h$/, /\/rapidjson\//, /\/qrcodegen\.h$/, new RegExp(`^${root}/(shell|web|tests)/`)],
  shell: [/\/include\/emscripten\//, /\/(GLES\d?|EGL|GL)\//, /imgui_impl_/, /GeographicLib/, new RegExp(`^${root}/(web|tests)/`)],
};

for (const [name, build] of Object.entries({ native, wasm })) {
  for (const [folder, patterns] of Object.entries(from_above)) {
    test(`${name}: no object of ${folder} was made from anything above it`, () => {
      const lists = made_from(build, folder);
      assert.ok(Object.keys(lists).length > 0, `${build} holds no object of ${folder}`);
      for (const [object, files] of Object.entries(lists)) {
        for (const pattern of patterns) assert.deepEqual(files.filter((file) => pattern.test(file)), [], `${object} reaches above`);
      }
    });
  }
}
