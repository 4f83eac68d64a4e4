#include "web/gl_renderer.h"

#include <emscripten.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>

#include "core/base/check.h"

namespace fogsheet {
namespace {

constexpr const char* k_vertex_shader = R"(#version 300 es
layout(location = 0) in vec2 at;
layout(location = 1) in vec2 uv;
layout(location = 2) in vec4 colour;
uniform vec4 place;  // scale and offset into clip space
out vec2 texel;
out vec4 ink;
void main() {
  texel = uv;
  ink = colour;
  gl_Position = vec4(at * place.xy + place.zw, 0.0, 1.0);
}
)";

constexpr double k_halo_em = 0.11;  // how far a halo reaches beyond its glyph

// Coverage of a glyph is its distance to the outline in screen pixels, half a pixel either way. A halo is the same outline
// moved outwards, less far where the text is so small that it would leave the image's known distances.
constexpr const char* k_fragment_shader = R"(#version 300 es
precision highp float;
uniform sampler2D glyphs;
uniform vec4 image;   // width and height in texels; texels from the outline to the image's 0 or 1, and to a halo's end
uniform float halo_u; // what a haloed glyph has more in u
uniform int pass;     // 0: as it is; 1: halos alone; 2: glyphs alone
uniform vec3 halo;
uniform vec3 lens;    // middle and radius of the window it is seen through, pixels from the lower left; radius 0: none
in vec2 texel;
in vec4 ink;
out vec4 result;
void main() {
  vec2 at = vec2(texel.x >= halo_u ? texel.x - halo_u : texel.x, texel.y);
  float texels_per_px = max(0.5 * (length(dFdx(texel)) + length(dFdy(texel))), 1e-4);
  float outwards = (128.0 / 255.0 - textureLod(glyphs, at / image.xy, 0.0).r) * 2.0 * image.z;
  float reach = min(image.w, image.z - 0.55 * texels_per_px);
  float edge = pass == 1 ? max(reach, 0.0) - outwards : -outwards;
  float coverage = at.x < 0.0 ? 1.0 : clamp(edge / texels_per_px + 0.5, 0.0, 1.0);
  if (lens.z > 0.0) coverage *= clamp(lens.z - distance(gl_FragCoord.xy, lens.xy) + 0.5, 0.0, 1.0);
  result = vec4(pass == 1 ? halo : ink.rgb, ink.a * coverage);
}
)";

// Twenty-one numbers, as page/underlay_layer.js takes them.
// clang-format off
EM_JS(void, page_draw_photograph, (const float* numbers), { Module["page"].draw_photograph(HEAPF32.subarray(numbers / 4, numbers / 4 + 21)); });
// clang-format on

GLuint compiled(GLenum kind, const char* source) {
  const GLuint shader = glCreateShader(kind);
  glShaderSource(shader, 1, &source, nullptr);
  glCompileShader(shader);
  return shader;
}

/// 0 when the browser refuses it, as it does for a context that is lost already.
GLuint linked_program() {
  const GLuint vertex = compiled(GL_VERTEX_SHADER, k_vertex_shader);
  const GLuint fragment = compiled(GL_FRAGMENT_SHADER, k_fragment_shader);
  const GLuint program = glCreateProgram();
  glAttachShader(program, vertex);
  glAttachShader(program, fragment);
  glLinkProgram(program);
  glDeleteShader(vertex);
  glDeleteShader(fragment);
  GLint done = GL_FALSE;
  glGetProgramiv(program, GL_LINK_STATUS, &done);
  return done ? program : 0;
}

float channel(std::uint32_t colour, int shift) { return static_cast<float>(colour >> shift & 0xFF) / 255.f; }

}  // namespace

GlRenderer::~GlRenderer() {
  if (context_) emscripten_webgl_destroy_context(context_);
}

bool GlRenderer::attach() {
  if (!context_) {
    EmscriptenWebGLContextAttributes attributes;
    emscripten_webgl_init_context_attributes(&attributes);
    attributes.alpha = false;
    attributes.depth = false;
    attributes.stencil = false;
    attributes.antialias = false;
    attributes.preserveDrawingBuffer = false;
    attributes.majorVersion = 2;
    attributes.minorVersion = 0;
    attributes.enableExtensionsByDefault = false;
    context_ = emscripten_webgl_create_context(canvas_, &attributes);
    if (context_ <= 0) {
      context_ = 0;
      return false;
    }
  }
  emscripten_webgl_make_context_current(context_);
  program_ = linked_program();
  if (!program_) return false;
  place_ = glGetUniformLocation(program_, "place");
  pass_ = glGetUniformLocation(program_, "pass");
  halo_ = glGetUniformLocation(program_, "halo");
  lens_ = glGetUniformLocation(program_, "lens");
  image_ = glGetUniformLocation(program_, "image");
  glGenTextures(1, &texture_);
  glBindTexture(GL_TEXTURE_2D, texture_);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  glUseProgram(program_);
  glUniform1f(glGetUniformLocation(program_, "halo_u"), k_halo_u);
  glEnable(GL_BLEND);
  glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  return true;
}

void GlRenderer::lose() {
  program_ = 0;
  texture_ = 0;
  glyph_revision_.reset();
  layers_.clear();
}

void GlRenderer::draw(const DrawnFrame& frame, const GlyphImage& glyphs, double pixel_ratio, int width, int height) {
  SHEET_CHECK(attached(), "a frame was drawn without a context");
  glViewport(0, 0, width, height);
  glDisable(GL_SCISSOR_TEST);
  glClearColor(channel(frame.background, IM_COL32_R_SHIFT), channel(frame.background, IM_COL32_G_SHIFT), channel(frame.background, IM_COL32_B_SHIFT), 1);
  glClear(GL_COLOR_BUFFER_BIT);
  if (glyphs.revision != glyph_revision_) upload(glyphs);
  glUniform3f(halo_, channel(frame.halo, IM_COL32_R_SHIFT), channel(frame.halo, IM_COL32_G_SHIFT), channel(frame.halo, IM_COL32_B_SHIFT));

  const double to_clip_x = 2 * pixel_ratio / width;
  const double to_clip_y = -2 * pixel_ratio / height;
  for (const DrawnLayer& layer : frame.layers) {
    if (layer.is_photograph && frame.photograph) draw_photograph(*frame.photograph, layer, frame.lens, pixel_ratio, width, height);
    if (!layer.list || layer.list->IdxBuffer.empty()) continue;
    const Buffers& buffers = buffers_of(layer);
    glBindVertexArray(buffers.array);
    glUniform4f(place_, static_cast<float>(layer.scale * to_clip_x), static_cast<float>(layer.scale * to_clip_y),
                static_cast<float>(layer.offset.x_px * to_clip_x - 1), static_cast<float>(layer.offset.y_px * to_clip_y + 1));
    PixelBox seen{0, 0, width, height};
    if (layer.in_lens) {
      const double x_px = frame.lens->centre.x_px * pixel_ratio, y_px = frame.lens->centre.y_px * pixel_ratio, radius_px = frame.lens->radius_px * pixel_ratio;
      glUniform3f(lens_, static_cast<float>(x_px), static_cast<float>(height - y_px), static_cast<float>(radius_px));
      seen = {std::max(0, static_cast<int>(x_px - radius_px) - 1), std::max(0, static_cast<int>(y_px - radius_px) - 1),
              std::min(width, static_cast<int>(x_px + radius_px) + 2), std::min(height, static_cast<int>(y_px + radius_px) + 2)};
    } else {
      glUniform3f(lens_, 0, 0, 0);
    }
    for (const Run& run : buffers.runs) {
      clip(run.clip, layer, pixel_ratio, seen, width, height);
      const auto* first = reinterpret_cast<const void*>(run.first * sizeof(ImDrawIdx));
      // All halos of a stretch of text go under all of its glyphs: a glyph's halo must not eat its neighbour.
      for (int pass = run.halo ? 1 : 0; pass <= (run.halo ? 2 : 0); ++pass) {
        glUniform1i(pass_, pass);
        glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(run.count), GL_UNSIGNED_INT, first);
      }
    }
  }
  glBindVertexArray(0);
}

void GlRenderer::draw_photograph(const DrawnPhotograph& photograph, const DrawnLayer& layer, const std::optional<Lens>& lens, double pixel_ratio, int width, int height) {
  const double to_px = layer.scale * pixel_ratio, left_px = layer.offset.x_px * pixel_ratio, top_px = layer.offset.y_px * pixel_ratio;
  const double x = 2 * to_px / width, y = -2 * to_px / height;  // of a millimetre in clip space
  const PictureTransform& lies = photograph.transform;
  double left = left_px + photograph.within.left_mm * to_px, right = left_px + photograph.within.right_mm * to_px;
  double top = top_px + photograph.within.top_mm * to_px, bottom = top_px + photograph.within.bottom_mm * to_px;
  double lens_x = 0, lens_y = 0, radius = 0;
  if (layer.in_lens && lens) {
    lens_x = lens->centre.x_px * pixel_ratio;
    lens_y = lens->centre.y_px * pixel_ratio;
    radius = lens->radius_px * pixel_ratio;
    left = std::max(left, lens_x - radius - 1);
    right = std::min(right, lens_x + radius + 1);
    top = std::max(top, lens_y - radius - 1);
    bottom = std::min(bottom, lens_y + radius + 1);
  }
  const auto whole = [](double value, int most) { return std::round(std::clamp(value, 0.0, static_cast<double>(most))); };
  const double first_x = whole(left, width), last_x = whole(right, width), first_y = whole(top, height), last_y = whole(bottom, height);
  if (last_x <= first_x || last_y <= first_y) return;
  const Colour paper = photograph.paper, ink = photograph.ink;
  const double numbers[21] = {lies.across.x_mm * x, lies.down.x_mm * x, (lies.corner.x_mm * to_px + left_px) * 2 / width - 1,
                              lies.across.y_mm * y, lies.down.y_mm * y, 1 - (lies.corner.y_mm * to_px + top_px) * 2 / height,
                              first_x, height - last_y, last_x - first_x, last_y - first_y,
                              lens_x, height - lens_y, radius,
                              paper.red / 255.0, paper.green / 255.0, paper.blue / 255.0,
                              ink.red / 255.0, ink.green / 255.0, ink.blue / 255.0,
                              photograph.opacity, photograph.is_dark ? 1.0 : 0.0};
  float handed_over[21];
  std::copy(std::begin(numbers), std::end(numbers), handed_over);
  page_draw_photograph(handed_over);
  glUseProgram(program_);
}

GlRenderer::Buffers& GlRenderer::buffers_of(const DrawnLayer& layer) {
  Buffers& buffers = layers_[layer.id];
  if (!buffers.array) {
    glGenVertexArrays(1, &buffers.array);
    glGenBuffers(1, &buffers.vertices);
    glGenBuffers(1, &buffers.indices);
    glBindVertexArray(buffers.array);
    glBindBuffer(GL_ARRAY_BUFFER, buffers.vertices);
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, buffers.indices);
    const auto attribute = [](GLuint index, GLint size, GLenum type, GLboolean normalised, std::size_t offset) {
      glEnableVertexAttribArray(index);
      glVertexAttribPointer(index, size, type, normalised, sizeof(ImDrawVert), reinterpret_cast<const void*>(offset));
    };
    attribute(0, 2, GL_FLOAT, GL_FALSE, offsetof(ImDrawVert, pos));
    attribute(1, 2, GL_FLOAT, GL_FALSE, offsetof(ImDrawVert, uv));
    attribute(2, 4, GL_UNSIGNED_BYTE, GL_TRUE, offsetof(ImDrawVert, col));
  }
  if (layer.revision == 0 || layer.revision != buffers.revision) upload(buffers, layer);
  return buffers;
}

void GlRenderer::upload(Buffers& buffers, const DrawnLayer& layer) {
  const ImDrawList& list = *layer.list;
  const GLenum usage = layer.revision == 0 ? GL_STREAM_DRAW : GL_STATIC_DRAW;
  glBindVertexArray(buffers.array);
  glBindBuffer(GL_ARRAY_BUFFER, buffers.vertices);
  glBufferData(GL_ARRAY_BUFFER, list.VtxBuffer.size_in_bytes(), list.VtxBuffer.Data, usage);
  glBufferData(GL_ELEMENT_ARRAY_BUFFER, list.IdxBuffer.size_in_bytes(), list.IdxBuffer.Data, usage);
  buffers.runs = runs_of(list);
  buffers.revision = layer.revision;
}

void GlRenderer::upload(const GlyphImage& glyphs) {
  SHEET_CHECK(glyphs.texels.size() == static_cast<std::size_t>(glyphs.width) * static_cast<std::size_t>(glyphs.height), "the glyph image is not as large as it says");
  glBindTexture(GL_TEXTURE_2D, texture_);
  glTexImage2D(GL_TEXTURE_2D, 0, GL_R8, glyphs.width, glyphs.height, 0, GL_RED, GL_UNSIGNED_BYTE, glyphs.texels.data());
  glUniform4f(image_, static_cast<float>(glyphs.width), static_cast<float>(glyphs.height), static_cast<float>(glyphs.range_px), static_cast<float>(k_halo_em * glyphs.px_per_em));
  glyph_revision_ = glyphs.revision;
}

std::vector<GlRenderer::Run> GlRenderer::runs_of(const ImDrawList& list) {
  std::vector<Run> runs;
  for (const ImDrawCmd& command : list.CmdBuffer) {
    if (command.ElemCount == 0 || command.UserCallback) continue;
    Run run{.clip = command.ClipRect, .first = command.IdxOffset};
    for (unsigned i = 0; i < command.ElemCount; i += 3) {
      const ImDrawIdx corner = list.IdxBuffer[static_cast<int>(command.IdxOffset + i)];
      const bool halo = list.VtxBuffer[static_cast<int>(command.VtxOffset + corner)].uv.x >= k_halo_u;
      if (halo != run.halo) {
        if (run.count > 0) runs.push_back(run);
        run.first += run.count;
        run.count = 0;
        run.halo = halo;
      }
      run.count += 3;
    }
    runs.push_back(run);
  }
  return runs;
}

void GlRenderer::clip(const ImVec4& rectangle, const DrawnLayer& layer, double pixel_ratio, const PixelBox& seen, int width, int height) {
  const auto to_px = [&](double along, double offset_px, int least, int most) {
    return static_cast<int>(std::lround(std::clamp((along * layer.scale + offset_px) * pixel_ratio, static_cast<double>(least), static_cast<double>(most))));
  };
  const int left = to_px(rectangle.x, layer.offset.x_px, seen.left, seen.right);
  const int right = to_px(rectangle.z, layer.offset.x_px, left, seen.right);
  const int top = to_px(rectangle.y, layer.offset.y_px, seen.top, seen.bottom);
  const int bottom = to_px(rectangle.w, layer.offset.y_px, top, seen.bottom);
  if (left == 0 && top == 0 && right == width && bottom == height) {
    glDisable(GL_SCISSOR_TEST);
    return;
  }
  glEnable(GL_SCISSOR_TEST);
  glScissor(left, height - bottom, right - left, bottom - top);
}

}  // namespace fogsheet
