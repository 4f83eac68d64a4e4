// What is typed to find something by. Foldings from Unicode 15, CaseFolding.txt.
#include "core/base/search_text.h"

#include "core/base/utf8.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

std::string folded(std::string text) {
  fold(text);
  return text;
}

bool finds(std::string_view typed, std::initializer_list<std::string_view> texts) {
  Search search(typed);
  for (const std::string_view text : texts) search.look_in(text);
  return search.all_found();
}

}  // namespace

TEST_CASE("great letters become small ones of the same length") {
  CHECK(folded("GULL Rock 12") == "gull rock 12");
  CHECK(folded("ÀÉÎÕÜÞ×÷ßÿ") == "àéîõüþ×÷ßÿ");
  CHECK(folded("ĀĎĬĲĶĹŇŊŶŸŹŽ") == "āďĭĳķĺňŋŷÿźž");
  CHECK(folded("ΆΈΉΊΌΎΏΑΡΣΩΫς") == "άέήίόύώαρσωϋσ");
  CHECK(folded("ЀЏАЯаяё") == "ѐџаяаяё");
  CHECK(folded("İı漢字🜨") == "İı漢字🜨");
  for (unsigned code = 0x80; code < 0x800; ++code) {
    const std::string text{static_cast<char>(0xC0 | code >> 6), static_cast<char>(0x80 | (code & 0x3F))};
    CHECK(is_utf8(folded(text)));
    CHECK(folded(folded(text)) == folded(text));
    CHECK(folded("x" + text + "Y").ends_with("y"));
  }
  CHECK(folded("A\xC3") == "a\xC3");
}

TEST_CASE("each word is found somewhere, in any order and anywhere within") {
  CHECK(finds("gull", {"Off Sarn", "Black Gull Rock"}));
  CHECK(finds("sarn GULL", {"Gull Sound", "Off Sarn"}));
  CHECK(finds("  ull  ", {"Gull"}));
  CHECK_FALSE(finds("gull tern", {"Gull Sound"}));
  CHECK(finds("", {}));
  CHECK(finds("øst", {"Østre Kvarken"}));
  Search search("gull");
  search.look_in("Gull");
  CHECK(search.all_found());
  search.begin_anew();
  CHECK_FALSE(search.all_found());
}
