// The page's colours as CSS, from the one table that the canvas uses too (shell/palettes.inc): a custom property a role for
// each palette, and the classes by which figures name their inks.

const palettes = ['day', 'dusk', 'night', 'high-contrast'];
const dark = ['dusk', 'night'];
const row = /^INK\((\w+),\s*"(#\w{6})",\s*"(#\w{6})",\s*"(#\w{6})",\s*"(#\w{6})"\)$/;

/// [[role, [day, dusk, night, high contrast]]...]
export function inks_of(table) {
  const lines = table.split('\n').filter((line) => line.startsWith('INK('));
  return lines.map((line) => {
    const found = row.exec(line.trim());
    if (!found) throw new Error(`no row of colours: ${line}`);
    const [, role, ...colours] = found;
    return [role.replaceAll('_', '-'), colours];
  });
}

export function palette_css(table) {
  const inks = inks_of(table);
  const blocks = palettes.map((palette, i) => {
    const colours = inks.map(([role, values]) => `  --${role}: ${values[i]};`);
    const selector = i === 0 ? ':root' : `[data-palette="${palette}"]`;
    return `${selector} {\n  color-scheme: ${dark.includes(palette) ? 'dark' : 'light'};\n${colours.join('\n')}\n}\n`;
  });
  const classes = inks.map(([role]) => `.figure .fill-${role} { fill: var(--${role}); }\n.figure .stroke-${role} { stroke: var(--${role}); }\n`);
  return blocks.join('') + classes.join('');
}
