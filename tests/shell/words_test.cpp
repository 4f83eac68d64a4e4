// Sentences: every reason that core can give has one.
#include "shell/words.h"

#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("every fault has a sentence of its own") {
  const std::string none = words::sentence({.fault = static_cast<Fault>(9999)});
  for (int i = 0; i <= static_cast<int>(k_last_fault); ++i) {
    CAPTURE(i);
    const std::string sentence = words::sentence({.fault = static_cast<Fault>(i), .texts = {"a", "b", "c"}, .numbers = {1, 2, 3}});
    CHECK(sentence != none);
    CHECK(sentence.size() > 10);
  }
}

TEST_CASE("numbers in sentences are plain") {
  CHECK(words::sentence({.fault = Fault::latitude_out_of_range, .numbers = {-80.25, 75}}).find("−80.25°") != std::string::npos);
  CHECK(words::sentence({.fault = Fault::stream_not_stemmed, .numbers = {3, 4.00001, 0, 3600}}) == "The stream can't be stemmed at 3 kn: it takes 4.1 kn through the water.");
  CHECK(words::sentence({.fault = Fault::speed_not_positive, .numbers = {-0.00001}}).find("At 0 kn") == 0);
  CHECK(words::sentence({.fault = Fault::name_too_long, .numbers = {201, 200}}).find("201 characters") != std::string::npos);
  CHECK(words::sentence({.fault = Fault::sheet_too_wide, .numbers = {7'800'000, 1'000'000}}).find("would take 1:7 800 000, and 1:1 000 000") != std::string::npos);
}

TEST_CASE("new marks get names that no mark has") {
  Document document;
  document.marks = document.marks.with({.id = {1}, .name = "Mark 1"});
  CHECK(words::unused_name(document, MarkKind::landmark) == "Mark 2");
  CHECK(words::unused_name(document, MarkKind::turn) == "Turn 1");
}
