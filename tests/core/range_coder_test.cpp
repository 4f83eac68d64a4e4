// Symbols written and read back, and how few bytes they take.
#include "core/formats/range_coder.h"

#include <cmath>
#include <string>
#include <vector>

#include "core/base/random.h"
#include "core/formats/text_odds.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("bits and whole numbers come back as they were written, in any mixture") {
  constexpr std::uint64_t k_seed = 20261126;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int run = 0; run < 500; ++run) {
    CAPTURE(run);
    struct Symbol {
      std::uint64_t count, value;
      std::size_t odds;
    };
    std::vector<Symbol> symbols;
    const double share = random.uniform();
    for (std::int64_t i = random.whole(0, 400); i > 0; --i) {
      const bool is_bit = random.whole(0, 1) == 0;
      const std::uint64_t count = is_bit ? 2 : static_cast<std::uint64_t>(random.whole(1, std::int64_t{1} << random.whole(0, 32)));
      // The ends of a range, where carries come from, as often as all between.
      const std::int64_t end = random.whole(0, 3);
      const std::uint64_t value = is_bit ? random.uniform() < share : end == 0 ? 0 : end == 1 ? count - 1 : static_cast<std::uint64_t>(random.whole(0, static_cast<std::int64_t>(count) - 1));
      symbols.push_back({is_bit ? 0 : count, value, static_cast<std::size_t>(random.whole(0, 3))});
    }
    Odds writing[4], reading[4];
    RangeCoder out;
    for (const Symbol& symbol : symbols) symbol.count == 0 ? static_cast<void>(out.bit(writing[symbol.odds], symbol.value != 0)) : static_cast<void>(out.uniform(symbol.value, symbol.count));
    const std::vector<std::uint8_t> bytes = out.finish();
    RangeCoder in(bytes);
    bool all_back = true;
    for (const Symbol& symbol : symbols) all_back = all_back && (symbol.count == 0 ? std::uint64_t{in.bit(reading[symbol.odds], false)} : in.uniform(0, symbol.count)) == symbol.value;
    CHECK(all_back);
    CHECK(in.ok());
  }
}

// Shannon (1948): no code takes fewer bits than the sum of -log2 of what each symbol was thought likely.
TEST_CASE("it takes less than a byte more than what the odds come to") {
  Random random(7);
  for (int run = 0; run < 100; ++run) {
    RangeCoder out;
    Odds odds;
    double bits = 0;
    for (int i = 0; i < 300; ++i) {
      const bool bit = random.uniform() < 0.2;
      bits -= std::log2((bit ? odds.set : 65'536 - odds.set) / 65'536.0);
      out.bit(odds, bit);
      out.uniform(static_cast<std::uint64_t>(random.whole(0, 999)), 1'000);
      bits += std::log2(1'000);
    }
    CHECK(static_cast<double>(out.finish().size()) * 8 < bits + 8);
  }
}

TEST_CASE("what lies past the end of the bytes is told, and stays within its range") {
  const std::vector<std::uint8_t> bytes = {0x12, 0x34};
  RangeCoder in(bytes);
  CHECK(in.ok());
  for (int i = 0; i < 100; ++i) CHECK(in.uniform(0, 1'000'003) < 1'000'003);
  CHECK_FALSE(in.ok());
}

TEST_CASE("odds follow what comes, and never become certainty") {
  Odds odds;
  for (int i = 0; i < 10'000; ++i) odds.learn(true);
  CHECK(odds.set > 65'000);
  CHECK(odds.set < 65'536);
  for (int i = 0; i < 10'000; ++i) odds.learn(false);
  CHECK(odds.set > 0);
  CHECK(odds.set < 500);
}

TEST_CASE("numbers of every length and both signs, and texts of any bytes, come back") {
  Random random(11);
  std::vector<std::int64_t> numbers = {0, 1, -1, INT64_MAX, INT64_MIN};
  for (int i = 0; i < 300; ++i) numbers.push_back(static_cast<std::int64_t>(random.next()) >> random.whole(0, 63));
  std::vector<std::string> texts = {"", "Gull Rock", "Off Sarn ′灯", std::string("\0\xFF\x01", 3)};
  for (int i = 0; i < 50; ++i) {
    std::string text;
    for (std::int64_t n = random.whole(0, 40); n > 0; --n) text += static_cast<char>(random.whole(0, 255));
    texts.push_back(text);
  }
  RangeCoder out;
  NumberOdds number_odds;
  TextOdds text_odds;
  for (const std::int64_t number : numbers) number_odds.signed_whole(out, number);
  for (std::string text : texts) text_odds.text(out, text, 200);
  const std::vector<std::uint8_t> bytes = out.finish();
  RangeCoder in(bytes);
  NumberOdds again;
  TextOdds text_again;
  for (const std::int64_t number : numbers) CHECK(again.signed_whole(in, 0) == number);
  for (const std::string& text : texts) {
    std::string read;
    text_again.text(in, read, 200);
    CHECK(read == text);
  }
  CHECK(in.ok());
}
