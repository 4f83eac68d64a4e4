// Draws the photograph under the sheet, in pieces that the graphics card takes, between the paper and the graticule. It shares
// the canvas's context with the application's own renderer, which draws all else: it has a texture unit of its own and binds
// nothing that it leaves bound there.

const largest_px = 2048;

const vertex_shader = `#version 300 es
uniform vec4 piece;   // left, top, width and height on the photograph, pixels of the file
uniform vec4 texels;  // the same on the texture, 0 to 1
uniform vec3 to_x;    // from there into clip space
uniform vec3 to_y;
out vec2 texel;
void main() {
  vec2 corner = vec2(gl_VertexID & 1, gl_VertexID >> 1);
  vec3 at = vec3(piece.xy + corner * piece.zw, 1.0);
  texel = texels.xy + corner * texels.zw;
  gl_Position = vec4(dot(to_x, at), dot(to_y, at), 0.0, 1.0);
}`;

// By day it darkens the paper, as ink does. By night what is dark on it is what is light, in one colour of the palette: its
// white paper must not glare.
const fragment_shader = `#version 300 es
precision highp float;
uniform sampler2D photograph;
uniform vec3 lens;    // middle and radius of the window it is seen through, pixels from the lower left; radius 0: none
uniform vec3 paper;
uniform vec3 ink;
uniform vec2 shown;   // how much of it; 1 by night
in vec2 texel;
out vec4 result;
void main() {
  vec3 seen = texture(photograph, texel).rgb;
  float dark = clamp(1.5 * (1.0 - dot(seen, vec3(0.2126, 0.7152, 0.0722))) - 0.06, 0.0, 1.0);  // thin grey figures come out, grey paper does not
  vec3 colour = shown.y > 0.5 ? mix(paper, ink, shown.x * dark) : mix(paper, paper * seen, shown.x);
  float coverage = lens.z > 0.0 ? clamp(lens.z - distance(gl_FragCoord.xy, lens.xy) + 0.5, 0.0, 1.0) : 1.0;
  result = vec4(colour, coverage);
}`;

export class UnderlayLayer {
  #gl;
  #program = null;
  #places;
  #array;
  #pieces = [];

  /// @param canvas  with the application's context
  constructor(canvas) {
    this.#gl = canvas.getContext('webgl2');
  }

  /// On a side.
  largest() { return Math.min(largest_px, this.#gl?.getParameter(this.#gl.MAX_TEXTURE_SIZE) ?? largest_px); }

  clear() {
    for (const { texture } of this.#pieces) this.#gl.deleteTexture(texture);
    this.#pieces = [];
  }

  /// The browser took the context away, and all that was in it.
  lose() {
    this.#program = null;
    this.#pieces = [];
  }

  /// @param shrunk  pixels of the file, on a side, that make one of the piece's
  add({ left, top, right, bottom, from, width, height, pixels }, shrunk) {
    const gl = this.#gl;
    if (!gl) return;
    const texture = gl.createTexture();
    gl.activeTexture(gl.TEXTURE1);
    gl.bindTexture(gl.TEXTURE_2D, texture);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA8, width, height, 0, gl.RGBA, gl.UNSIGNED_BYTE, pixels);
    gl.generateMipmap(gl.TEXTURE_2D);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.LINEAR_MIPMAP_LINEAR);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.LINEAR);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE);
    gl.bindTexture(gl.TEXTURE_2D, null);
    gl.activeTexture(gl.TEXTURE0);
    this.#pieces.push({
      texture,
      piece: [left * shrunk, top * shrunk, (right - left) * shrunk, (bottom - top) * shrunk],
      texels: [(left - from.x) / width, (top - from.y) / height, (right - left) / width, (bottom - top) / height],
    });
  }

  /// @param numbers  as web/gl_renderer.cpp has them: into clip space 6, window 4, lens 3, paper 3, ink 3, shown 2
  draw(numbers) {
    const gl = this.#gl;
    if (!gl || gl.isContextLost() || this.#pieces.length === 0) return;
    this.#program ??= this.#linked();
    const [left, bottom, width, height] = numbers.subarray(6, 10);
    gl.enable(gl.SCISSOR_TEST);
    gl.scissor(left, bottom, width, height);
    gl.useProgram(this.#program);
    gl.bindVertexArray(this.#array);
    const place = this.#places;
    gl.uniform3fv(place.to_x, numbers.subarray(0, 3));
    gl.uniform3fv(place.to_y, numbers.subarray(3, 6));
    gl.uniform3fv(place.lens, numbers.subarray(10, 13));
    gl.uniform3fv(place.paper, numbers.subarray(13, 16));
    gl.uniform3fv(place.ink, numbers.subarray(16, 19));
    gl.uniform2fv(place.shown, numbers.subarray(19, 21));
    gl.activeTexture(gl.TEXTURE1);
    for (const { texture, piece, texels } of this.#pieces) {
      gl.bindTexture(gl.TEXTURE_2D, texture);
      gl.uniform4fv(place.piece, piece);
      gl.uniform4fv(place.texels, texels);
      gl.drawArrays(gl.TRIANGLE_STRIP, 0, 4);
    }
    gl.bindTexture(gl.TEXTURE_2D, null);
    gl.activeTexture(gl.TEXTURE0);
    gl.bindVertexArray(null);
  }

  #linked() {
    const gl = this.#gl;
    const program = gl.createProgram();
    for (const [kind, source] of [[gl.VERTEX_SHADER, vertex_shader], [gl.FRAGMENT_SHADER, fragment_shader]]) {
      const shader = gl.createShader(kind);
      gl.shaderSource(shader, source);
      gl.compileShader(shader);
      gl.attachShader(program, shader);
      gl.deleteShader(shader);
    }
    gl.linkProgram(program);
    gl.useProgram(program);
    gl.uniform1i(gl.getUniformLocation(program, 'photograph'), 1);
    const names = ['to_x', 'to_y', 'lens', 'paper', 'ink', 'shown', 'piece', 'texels'];
    this.#places = Object.fromEntries(names.map((name) => [name, gl.getUniformLocation(program, name)]));
    this.#array = gl.createVertexArray();
    return program;
  }
}
