#include "core/directions/chain.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("true to magnetic as rows that add up") {
  // 100 T with 3 W is 103 M: common practice, no source.
  const Chain chain = chain_from_true(TrueDirection(100), Variation{-3}, Rounding::whole_degrees);
  REQUIRE(chain.rows.size() == 3);
  CHECK(chain.rows[0].term == ChainTerm::true_direction);
  CHECK(chain.rows[1].term == ChainTerm::variation);
  CHECK(chain.rows[1].shown_deg == -3);
  CHECK(chain.rows[1].applied_sign == 1);  // west: the compass reads more, add
  CHECK(chain.rows[2].term == ChainTerm::magnetic_direction);
  CHECK(chain.rows[2].shown_deg == 103);
  CHECK_FALSE(chain.rows[2].by_tenths_deg);
  CHECK_FALSE(chain.deviation_entered);
}

TEST_CASE("magnetic to true takes west away") {
  const Chain chain = chain_from_magnetic(MagneticDirection(2), Variation{-3}, Rounding::whole_degrees);
  CHECK(chain.rows[1].applied_sign == -1);
  CHECK(chain.rows[2].term == ChainTerm::true_direction);
  CHECK(chain.rows[2].shown_deg == 359);
}

TEST_CASE("a variation that rounds to nought is not applied") {
  const Chain chain = chain_from_true(TrueDirection(100.4), Variation{0.4}, Rounding::whole_degrees);
  CHECK(chain.rows[1].applied_sign == 0);
  CHECK(chain.rows[2].shown_deg == 100);
}

TEST_CASE("the value by tenths stands there from three quarters of a degree on") {
  // 47.5 T with 5.4 W: 048 + 5 = 053 shown, 052.9 exact.
  CHECK_FALSE(chain_from_true(TrueDirection(47.5), Variation{-5.4}, Rounding::whole_degrees).rows[2].by_tenths_deg);
  // 47.5 T with 5.25 E: 048 - 5 = 043 shown, 042.25 exact: moved by just 0.75. By tenths 47.5 - 5.3 = 42.2.
  const ChainRow row = chain_from_true(TrueDirection(47.5), Variation{5.25}, Rounding::whole_degrees).rows[2];
  CHECK(row.shown_deg == 43);
  CHECK(row.exact_deg == 42.25);
  REQUIRE(row.by_tenths_deg);
  CHECK(*row.by_tenths_deg == 42.2);
}

TEST_CASE("by tenths the sum adds up to the tenth") {
  const Chain chain = chain_from_true(TrueDirection(0.04), Variation{0.25}, Rounding::tenths);
  CHECK(chain.rows[0].shown_deg == 0);
  CHECK(chain.rows[1].shown_deg == 0.3);
  CHECK(chain.rows[2].shown_deg == 359.7);
}
