// Lines that the typeface can't draw alone: asked for once, placed within the width that core counts, and bounded.
#include "shell/canvas/glyph_atlas.h"

#include "core/figure/text_metrics.h"
#include "doctest/doctest.h"
#include "imgui.h"
#include "shell/canvas/brush.h"
#include "tests/shell/fake_platform.h"
#include "tests/shell/hands.h"

using namespace fogsheet;

namespace {

struct Lettering {
  FakePlatform machine;
  GlyphAtlas atlas;
  Lettering() { atlas.set_machine(machine); }
};

std::string numbered(int i) { return "灯台" + std::to_string(i); }

/// Left and right end of what is drawn in a list, px.
struct Extent {
  float left = 1e9f, right = -1e9f;
};
Extent extent_of(const ImDrawList& list) {
  Extent extent;
  for (const ImDrawVert& vertex : list.VtxBuffer) {
    extent.left = std::min(extent.left, vertex.pos.x);
    extent.right = std::max(extent.right, vertex.pos.x);
  }
  return extent;
}

}  // namespace

TEST_CASE("a line is drawn by the machine once, and kept") {
  Lettering with;
  const Glyph first = *with.atlas.line(Face::regular, "Ακτή");
  const std::uint64_t revision = with.atlas.revision();
  CHECK(with.atlas.line(Face::regular, "Ακτή")->u0_px == first.u0_px);
  CHECK(with.machine.text_images == std::vector<std::string>{"Ακτή"});
  CHECK(with.atlas.revision() == revision);
  CHECK(with.atlas.line(Face::bold, "Ακτή") != nullptr);  // another face is another image
  CHECK(with.machine.text_images.size() == 2);
}

TEST_CASE("its coverage is in the image as distances") {
  Lettering with;
  const Glyph& glyph = *with.atlas.line(Face::regular, "灯台灯台");
  const auto texel = [&](float x, float y) { return with.atlas.texels()[static_cast<std::size_t>(y) * static_cast<std::size_t>(with.atlas.width()) + static_cast<std::size_t>(x)]; };
  CHECK(texel((glyph.u0_px + glyph.u1_px) / 2, (glyph.v0_px + glyph.v1_px) / 2) == 255);
  CHECK(texel(glyph.u0_px, glyph.v0_px) == 0);
}

TEST_CASE("no glyph begins at the image's edge, where a rounding error would make it a solid shape") {
  Lettering with;
  with.machine.text_advance_em = 40;
  std::string name = "灯";
  for (int i = 0; i < 30; ++i) {
    name += "灯";
    CHECK(with.atlas.line(Face::regular, name)->u0_px >= 1);
  }
  CHECK(with.atlas.line(Face::regular, name)->v0_px > 0);  // more than one row was filled
}

TEST_CASE("a line is no wider than core counts, and as wide as it is where that is less") {
  for (const double natural_em : {1.5, 4.0, 40.0}) {
    CAPTURE(natural_em);
    Lettering with;
    with.machine.text_advance_em = natural_em;
    CHECK(with.atlas.line(Face::regular, "灯台灯台")->advance_em == doctest::Approx(std::min(natural_em, 4.0)).epsilon(0.01));
  }
}

TEST_CASE("a line stands at its anchor, and within the box its label was placed by") {
  struct Case { Anchor anchor; float left, right; };
  // A box 2 em wide by the machine, 4 em counted, at 10 px an em about x = 100; its image has a rim of k_range_px.
  constexpr float k_rim = static_cast<float>(GlyphAtlas::k_range_px / GlyphAtlas::k_px_per_em * 10);
  for (const Case& c : {Case{Anchor::start, 100, 120}, Case{Anchor::middle, 90, 110}, Case{Anchor::end, 80, 100}}) {
    FakePlatform machine;
    machine.text_advance_em = 2;
    DrawKit kit;
    kit.glyphs.set_machine(machine);
    const DrawKit::List list = kit.new_list();
    Brush(kit, *list).text({100, 50}, "灯台灯台", 10, Face::regular, c.anchor, Ink::ink, true);
    CHECK(list->VtxBuffer.Size == 4);  // one quad, halo and all
    const Extent extent = extent_of(*list);
    CHECK(extent.left == doctest::Approx(c.left - k_rim));
    CHECK(extent.right == doctest::Approx(c.right + k_rim));
  }
}

TEST_CASE("a line that the machine can't draw, or that has no width, is none") {
  Lettering with;
  with.machine.text_advance_em = 0;
  CHECK(with.atlas.line(Face::regular, "灯") == nullptr);
  CHECK(with.atlas.line(Face::regular, "灯") == nullptr);
  CHECK(with.machine.text_images.size() == 1);  // asked for once, in vain
  CHECK(with.atlas.line(Face::regular, "\u0301\u0301") == nullptr);
  CHECK(GlyphAtlas().line(Face::regular, "灯") == nullptr);
}

TEST_CASE("the longest name is drawn coarser, within the image") {
  Lettering with;
  with.machine.text_advance_em = 1000;
  std::string name;
  for (int i = 0; i < 66; ++i) name += "灯";  // k_most_name_bytes
  const Glyph& glyph = *with.atlas.line(Face::regular, name);
  CHECK(glyph.u1_px <= static_cast<float>(with.atlas.width()));
  CHECK(glyph.advance_em == doctest::Approx(66).epsilon(0.01));
}

TEST_CASE("the image is bounded: what finds no room is left out, and has it once what is no more drawn is forgotten") {
  Lettering with;
  with.machine.text_advance_em = 20;
  std::string names[400];
  for (int i = 0; i < 400; ++i) names[i] = numbered(i) + "灯灯灯灯灯灯灯灯灯灯灯灯灯灯灯灯灯灯";
  with.atlas.begin_drawing();
  int drawn = 0;
  for (const std::string& name : names) drawn += with.atlas.line(Face::regular, name) != nullptr;
  CHECK(drawn > 50);
  CHECK(drawn < 200);
  CHECK(with.atlas.height() <= 2048);
  CHECK(with.machine.text_images.size() <= static_cast<std::size_t>(drawn) + 1);  // the rest are not even drawn
  CHECK_FALSE(with.atlas.crowded());  // all that has room is in this drawing: there is no more to be had

  with.atlas.begin_drawing();
  CHECK(with.atlas.line(Face::regular, names[399]) == nullptr);
  CHECK(with.atlas.crowded());
  with.atlas.start_anew();
  with.atlas.begin_drawing();
  CHECK(with.atlas.line(Face::regular, names[399]) != nullptr);
  CHECK_FALSE(with.atlas.crowded());
  CHECK(with.atlas.height() < 2048);
}

TEST_CASE("a sheet asks the machine for no line unless a name needs it, and then once") {
  Tabletop desk;
  desk.app.frame(0);
  CHECK(desk.platform.text_images.empty());
  desk.done("change-mark", Value::object({{"id", desk.mark_id(0)}, {"name", "Маяк Песчаный"}}));
  desk.app.frame(1000);
  CHECK(desk.platform.text_images == std::vector<std::string>{"Маяк Песчаный"});
  for (int i = 0; i < 5; ++i) desk.app.frame(2000 + 16 * i);
  desk.done("closer");
  desk.app.frame(4000);
  CHECK(desk.platform.text_images.size() == 1);
}
