// The document's value: names of kinds, whole parts, what lies on the sheet.
#include "core/document/document.h"

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("kinds of marks have the names that scripts use") {
  struct Case { MarkKind kind; const char* name; };
  const Case cases[] = {{MarkKind::landmark, "landmark"}, {MarkKind::light, "light"}, {MarkKind::turn, "turn"},
                        {MarkKind::danger, "danger"}, {MarkKind::other, "other"}};
  for (const Case& c : cases) {
    CHECK(mark_kind_name(c.kind) == c.name);
    CHECK(mark_kind_named(c.name) == c.kind);
  }
  CHECK_FALSE(mark_kind_named("Landmark"));
  CHECK_FALSE(mark_kind_named(""));
}

TEST_CASE("numbers in whole parts come back as the same double") {
  Random random(20260713);
  struct Case { double parts_per_unit; double most; };
  const Case cases[] = {{k_parts_per_nm, 60}, {k_parts_per_mm, 90}, {k_parts_per_degree, 180}, {k_parts_per_annual_minute, 120}};
  for (const Case& c : cases)
    for (int i = 0; i < 10'000; ++i) {
      const std::int64_t parts = whole_parts(random.uniform(-c.most, c.most), c.parts_per_unit);
      const double value = from_parts(parts, c.parts_per_unit);
      CHECK(whole_parts(value, c.parts_per_unit) == parts);
    }
  CHECK(from_parts(whole_parts(-9.42, k_parts_per_degree), k_parts_per_degree) == -9.42);
  CHECK(from_parts(whole_parts(0.25, k_parts_per_nm), k_parts_per_nm) == 0.25);
}
