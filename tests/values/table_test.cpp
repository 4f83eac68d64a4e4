#include "tests/values/table.h"

#include "doctest/doctest.h"

using namespace fogsheet::values;

TEST_CASE("outputs are parted by a semicolon and a blank, so that one may hold a semicolon") {
  const Reading reading = read_table("t.csv",
                                     "id,kind,text,outputs,tolerance,tolerance_unit,needs,class\n"
                                     "a,geo-uri,x,valid=yes; equal_to=geo:1;b=c,0; 0,text; text,,published\n",
                                     {});
  REQUIRE(reading.error.empty());
  const Row& row = reading.table.rows.at(0);
  CHECK(row.defect.empty());
  REQUIRE(row.wanted.size() == 2);
  CHECK(row.wanted[1].value == "geo:1;b=c");
  CHECK(row.inputs.at("text") == "x");
}

TEST_CASE("columns take the tolerances of their file, else of their kind") {
  const auto tolerances = Tolerances::read(
      "file,kind,column,tolerance,unit,reason\n"
      "one.csv,sea,D_deg,0.1,deg,x\ntwo.csv,sea,D_deg,0.2,deg,x\n");
  REQUIRE(tolerances);
  CHECK(tolerances->of("two.csv", "sea").at(0).tolerance == 0.2);
  REQUIRE(tolerances->of("three.csv", "sea").size() == 1);
  CHECK(tolerances->of("three.csv", "sea").at(0).tolerance == 0.1);
  const Reading reading = read_table("two.csv", "id,kind,lat_deg,D_deg,needs,class\na,sea,50,1.5,,published\n", *tolerances);
  CHECK(reading.table.rows.at(0).wanted.at(0).value == "1.5");
  CHECK(reading.table.rows.at(0).inputs.count("D_deg") == 0);
  CHECK_FALSE(Tolerances::read("file,kind\na,b\n"));
}

TEST_CASE("what cannot be read says why, a row that is broken is a row") {
  CHECK_FALSE(read_table("t.csv", "a,b\n1,2\n", {}).error.empty());
  CHECK_FALSE(read_table("t.csv", "id,kind,class\n1,2\n", {}).error.empty());
  CHECK_FALSE(read_table("t.csv", "", {}).error.empty());
  const Reading reading = read_table("t.csv",
                                     "id,kind,inputs,outputs,tolerance,tolerance_unit,class\n"
                                     "a,k,x=1,y=2; z=3,0.1,nm; nm,published\nb,k,x=1,,,,given\n",
                                     {});
  REQUIRE(reading.error.empty());
  CHECK_FALSE(reading.table.rows.at(0).defect.empty());
  CHECK(reading.table.rows.at(1).defect.empty());
}
