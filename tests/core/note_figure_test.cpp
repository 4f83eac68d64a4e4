#include "core/figure/note_figure.h"

#include <algorithm>

#include "core/base/random.h"
#include "core/document/actions.h"
#include "core/figure/sheet_figure.h"
#include "core/figure/text_metrics.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

std::string without_blanks(std::string text) {
  std::erase_if(text, [](char c) { return c == ' ' || c == '\n'; });
  return text;
}

}  // namespace

TEST_CASE("lines break where they are told to, else at blanks, else within a word") {
  CHECK(broken_lines("one", 10, Face::regular) == std::vector<std::string>{"one"});
  CHECK(broken_lines("one\ntwo\n", 10, Face::regular) == std::vector<std::string>{"one", "two", ""});
  CHECK(broken_lines("", 10, Face::regular) == std::vector<std::string>{""});
  CHECK(broken_lines("breaks over the ledge", 7, Face::regular) == std::vector<std::string>{"breaks over", "the ledge"});
  const std::vector<std::string> cut = broken_lines(std::string(40, 'm'), 8, Face::regular);
  CHECK(cut.size() > 3);
}

TEST_CASE("broken lines are within their width and lose nothing but blanks") {
  Random random(31);
  const char* const pieces[] = {"a", "tide", " ", "  ", "\n", "Ness", "é", "′", "岩", "\xF0\x9F\x8C\x8A", "\xFF"};
  for (int i = 0; i < 500; ++i) {
    std::string text;
    for (int k = 0; k < 60; ++k) text += pieces[static_cast<std::size_t>(random.uniform(0, 10.99))];
    std::string together;
    for (const std::string& line : broken_lines(text, 9, Face::regular)) {
      // A single character may be wider than a line, none here is.
      CHECK(text_width_em(line, Face::regular) <= 9 + 1e-9);
      together += line;
    }
    CHECK(without_blanks(together) == without_blanks(text));
  }
}

TEST_CASE("a note covers its lines, and is drawn where the sheet has it") {
  const std::optional<LaidNote> note = lay_note({50, 60}, "overfalls\non the ebb", k_print_legibility);
  REQUIRE(note);
  CHECK(note->lines.size() == 2);
  CHECK(note->covers.left_mm == 50);
  CHECK(note->covers.top_mm < 60);
  CHECK(note->covers.bottom_mm > 60 + note->height_mm);
  History history(*made_sheet({.mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 100'000, .date = {2026, 6, 21}}));
  REQUIRE(add_text_note(history, 44, -31, "overfalls\non the ebb").ok());
  SheetNotes notes;
  notes.roses.resize(history.now().roses.size());
  const Figure figure = sheet_figure(history.now(), notes, {.legibility = k_print_legibility});
  int found = 0;
  for (const Shape& shape : figure.on(Layer::labels))
    if (const auto* text = std::get_if<Text>(&shape)) found += text->text == "overfalls" || text->text == "on the ebb" ? 1 : 0;
  CHECK(found == 2);
  // Too small to be read it is left out.
  CHECK_FALSE(lay_note({50, 60}, "overfalls", screen_legibility(0.5)));
}
