// GPX read as it is met, and written as its schema has it. Source of what is valid: the GPX 1.1 schema; our own samples were
// checked against it with xmllint (tests/values/formats.csv has more of them).
#include <cmath>
#include <string>

#include "core/exchange/exchange.h"
#include "core/exchange/gpx_reader.h"
#include "core/exchange/gpx_writer.h"
#include "doctest/doctest.h"
#include "tests/core/random_acts.h"

using namespace fogsheet;

namespace {

std::string gpx(const std::string& inside) { return "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"t\">" + inside + "</gpx>"; }

MarksAndLines taken(const std::string& bytes) {
  const Result<MarksAndLines> read = read_file(bytes);
  REQUIRE_MESSAGE(read.ok(), bytes.substr(0, 200));
  return *read;
}

std::string utf16(const std::string& ascii, bool big_end_first) {
  std::string bytes = big_end_first ? "\xFE\xFF" : "\xFF\xFE";
  for (const char c : ascii) {
    if (big_end_first) bytes += '\0';
    bytes += c;
    if (!big_end_first) bytes += '\0';
  }
  return bytes;
}

const std::string k_two = "<wpt lat=\"44.1\" lon=\"-31.2\"><name>Gull Rock</name></wpt><rte><name>Out</name><rtept lat=\"44\" lon=\"-31\"><name>A</name></rtept><rtept lat=\"44.2\" lon=\"-31.3\"/></rte>";

void check_two(const MarksAndLines& all) {
  REQUIRE(all.marks.size() == 1);
  CHECK(all.marks[0].name == "Gull Rock");
  CHECK(all.marks[0].at == quantise({44.1, -31.2}));
  REQUIRE(all.lines.size() == 1);
  CHECK(all.lines[0].name == "Out");
  CHECK(all.lines[0].origin == LineOrigin::route);
  CHECK(all.lines[0].points == std::vector<FilePoint>{{quantise({44, -31}), "A"}, {quantise({44.2, -31.3}), ""}});
  CHECK(all.left_out_count == 0);
}

}  // namespace

TEST_CASE("GPX: marks and routes, however the file is dressed") {
  check_two(taken(gpx(k_two)));
  CHECK(!taken(gpx(k_two)).departure);
  SUBCASE("byte order mark, declaration, comment, blank lines before it") {
    check_two(taken("\xEF\xBB\xBF<?xml version=\"1.0\" encoding=\"UTF-8\"?><!-- by hand -->" + gpx(k_two)));
    check_two(taken("\r\n\n  <?xml version=\"1.0\"?>" + gpx(k_two) + "\n" + std::string(3, '\0')));
  }
  SUBCASE("UTF-16, either end first") {
    check_two(taken(utf16("<?xml version=\"1.0\" encoding=\"UTF-16\"?>" + gpx(k_two), false)));
    check_two(taken(utf16(gpx(k_two), true)));
  }
  SUBCASE("a prefix for GPX's own namespace, and one declared again inside") {
    std::string text = k_two;
    for (const char* name : {"wpt", "name", "rte"})
      for (const std::string& mark : {std::string("<"), std::string("</")}) {
        const std::string from = mark + name, to = mark + "g:" + name;
        for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size()) text.replace(at, from.size(), to);
      }
    const MarksAndLines all = taken("<g:gpx xmlns:g=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"t\">" + text + "</g:gpx>");
    check_two(all);
    CHECK(!all.departure);
  }
  SUBCASE("GPX 1.0, no namespace, no version: read, and told") {
    for (const char* head : {"<gpx xmlns=\"http://www.topografix.com/GPX/1/0\" version=\"1.0\" creator=\"t\">", "<gpx>"}) {
      const MarksAndLines all = taken(head + k_two + "</gpx>");
      check_two(all);
      REQUIRE(all.departure);
      CHECK(all.departure->what == "gpx");
      CHECK(all.departure->line == 1);
    }
  }
  SUBCASE("another program's things beside ours, some of the same name") {
    const MarksAndLines all = taken("<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" xmlns:x=\"urn:x\" version=\"1.1\" creator=\"t\">"
                                    "<wpt lat=\"44.1\" lon=\"-31.2\"><name>Gull Rock</name><extensions><x:name>no</x:name><x:wpt lat=\"1\" lon=\"1\"><name>no</name></x:wpt></extensions></wpt>"
                                    "<rte><name>Out</name><rtept lat=\"44\" lon=\"-31\"><name>A</name></rtept><rtept lat=\"44.2\" lon=\"-31.3\"/></rte></gpx>");
    check_two(all);
    CHECK(!all.departure);
  }
  SUBCASE("a prefix that was never declared: read, and told") {
    const MarksAndLines all = taken(gpx(k_two + "<trk><extensions><y:colour>red</y:colour></extensions></trk>"));
    CHECK(all.marks.size() == 1);
    CHECK(all.departure.has_value());
  }
  SUBCASE("order of elements other than the schema's: read, and told where") {
    const MarksAndLines all = taken(gpx("\n\n<wpt lat=\"44.1\" lon=\"-31.2\"><name>Gull Rock</name>\n<ele>2</ele></wpt>"));
    REQUIRE(all.departure);
    CHECK(all.departure->line == 4);
    CHECK(all.departure->what == "ele");
  }
}

TEST_CASE("GPX: encodings of one byte") {
  const auto name_in = [](const std::string& declared, const std::string& name) {
    return taken("<?xml version=\"1.0\" encoding=\"" + declared + "\"?>" + gpx("<wpt lat=\"1\" lon=\"2\"><name>" + name + "</name></wpt>"));
  };
  CHECK(name_in("ISO-8859-1", "F\xE9" "camp").marks[0].name == "F\xC3\xA9" "camp");
  CHECK(name_in("windows-1252", "\x93Gull\x94").marks[0].name == "\xE2\x80\x9CGull\xE2\x80\x9D");
  const MarksAndLines untold = name_in("UTF-8", "F\xE9" "camp");  // says UTF-8 and is not
  CHECK(untold.marks[0].name == "F\xC3\xA9" "camp");
  CHECK(untold.departure.has_value());
  CHECK(read_file("<?xml version=\"1.0\" encoding=\"KOI8-R\"?>" + gpx("")).problem().fault == Fault::file_encoding);
}

TEST_CASE("GPX: names and notes") {
  const MarksAndLines all = taken(gpx("<wpt lat=\"1\" lon=\"2\"><name>  A &amp; B\n &#60;1&#62; </name><desc><![CDATA[<b>left & right</b>]]>\nsecond</desc></wpt>"
                                      "<wpt lat=\"1\" lon=\"3\"><cmt>only a remark</cmt></wpt><wpt lat=\"1\" lon=\"4\"><name>" + std::string(500, 'x') + "</name></wpt>"));
  REQUIRE(all.marks.size() == 3);
  CHECK(all.marks[0].name == "A & B <1>");
  CHECK(all.marks[0].note == "<b>left & right</b>\nsecond");
  CHECK(all.marks[1].name.empty());
  CHECK(all.marks[1].note == "only a remark");
  CHECK(all.marks[2].name == std::string(k_most_name_bytes, 'x'));
  REQUIRE(all.left_out.size() == 1);
  CHECK(all.left_out[0].why == LeftOutWhy::name_cut);
}

TEST_CASE("GPX: places that can't be used are listed with their line") {
  const MarksAndLines all = taken(gpx("\n<wpt lat=\"91\" lon=\"0\"><name>A</name></wpt>\n<wpt lat=\"x\" lon=\"0\"><name>B</name></wpt>\n<wpt lon=\"0\"/>\n<wpt lat=\"80\" lon=\"0\"/>\n<wpt lat=\"NaN\" lon=\"0\"/>\n"
                                      "<wpt lat=\"1e400\" lon=\"0\"/><wpt lat=\"50,5\" lon=\"+180\"><name>comma</name></wpt><rte/><rte><rtept lat=\"1\" lon=\"1\"/></rte>"));
  REQUIRE(all.marks.size() == 1);
  CHECK(all.marks[0].at == quantise({50.5, -180}));
  const auto is = [&](std::size_t i, LeftOutWhy why, std::uint32_t line, const char* what) { CHECK(all.left_out[i] == LeftOut{why, line, what}); };
  REQUIRE(all.left_out.size() == 8);
  is(0, LeftOutWhy::place_out_of_range, 2, "A");
  is(1, LeftOutWhy::place_unreadable, 3, "B");
  is(2, LeftOutWhy::place_unreadable, 4, "wpt");
  is(3, LeftOutWhy::past_sheets, 5, "wpt");
  is(4, LeftOutWhy::place_unreadable, 6, "wpt");
  is(5, LeftOutWhy::place_unreadable, 7, "wpt");
  is(6, LeftOutWhy::line_too_short, 7, "rte");
  is(7, LeftOutWhy::line_too_short, 7, "rte");
}

TEST_CASE("GPX: a track of 100 000 points is thinned, and says to what") {
  std::string points;
  for (int i = 0; i < 100'000; ++i)
    points += "<trkpt lat=\"" + std::to_string(44 + 0.1 * std::sin(i / 20'000.0)) + "\" lon=\"" + std::to_string(-31 + i * 2e-6) + "\"><ele>1</ele><time>2026-11-25T10:00:00Z</time></trkpt>\n";
  const MarksAndLines all = taken(gpx("<trk><name>Home</name><trkseg>" + points + "</trkseg><trkseg><trkpt lat=\"1\" lon=\"1\"/><trkpt lat=\"2\" lon=\"2\"/></trkseg></trk>"));
  REQUIRE(all.lines.size() == 2);
  CHECK(all.lines[0].name == "Home");
  CHECK(all.lines[1].name == "Home");
  CHECK(all.lines[0].origin == LineOrigin::track);
  CHECK(all.lines[0].points_there == 100'000);
  CHECK(all.lines[0].points.size() <= 300);
  CHECK(all.lines[0].points.size() > 10);
  CHECK(all.lines[0].within_m <= 20);
  CHECK(all.lines[0].within_m > 0);
  CHECK(!all.departure);
}

TEST_CASE("GPX: of a file that was cut, what is whole is read") {
  const std::string whole = gpx("<wpt lat=\"1\" lon=\"2\"><name>A</name></wpt>\n<wpt lat=\"3\" lon=\"4\"><name>B</name></wpt>\n<trk><trkseg><trkpt lat=\"1\" lon=\"2\"/>\n<trkpt lat=\"1.5\" lon=\"2\"/><trkpt lat=\"2\" lon=\"2.5\"/></trkseg></trk>");
  const MarksAndLines all = taken(whole);
  CHECK(all.broken_past == 0);
  std::size_t most = 0, salvaged = 0;
  for (std::size_t size = 1; size < whole.size(); ++size) {
    CAPTURE(size);
    const Result<MarksAndLines> read = read_file(whole.substr(0, size));
    if (!read.ok()) {
      CHECK(salvaged == 0);  // once something is whole it is not lost by a later cut
      continue;
    }
    ++salvaged;
    CHECK(read->broken_past > 0);
    CHECK(read->marks.size() >= most);
    most = read->marks.size();
    for (std::size_t i = 0; i < most; ++i) CHECK(read->marks[i] == all.marks[i]);
    if (!read->lines.empty()) CHECK(read->lines[0].points.front() == all.lines[0].points.front());
  }
  CHECK(salvaged > 0);
  const MarksAndLines cut = taken(whole.substr(0, whole.find("<trkpt lat=\"2\"") + 9));
  CHECK(cut.marks.size() == 2);
  REQUIRE(cut.lines.size() == 1);
  CHECK(cut.lines[0].points.size() == 2);
  CHECK(cut.broken_past == 4);
}

TEST_CASE("GPX: hostile files show a reason and nothing else") {
  const auto fault = [](const std::string& bytes) { return read_file(bytes).problem().fault; };
  CHECK(fault("<!DOCTYPE gpx [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;&a;\">]>" + gpx("&b;")) == Fault::file_own_types);
  CHECK(fault("<!DOCTYPE gpx SYSTEM \"file:///etc/passwd\">" + gpx("")) == Fault::file_own_types);
  std::string deep;
  for (int i = 0; i < 100'000; ++i) deep += "<a>";
  CHECK(fault(gpx(deep)) == Fault::file_too_deep);
  CHECK(fault("<svg xmlns=\"http://www.w3.org/2000/svg\"><script>1</script></svg>") == Fault::file_of_other_kind);
  CHECK(read_file("<html><body/></html>").problem().texts == std::vector<std::string>{"XML", "html"});
  CHECK(read_file("<t lat=\"0\"/>").problem().texts == std::vector<std::string>{"XML", "t"});  // it ends as it is refused
  CHECK(read_file("<!DOCTYPE html><html><p>Log in</html>").problem().texts == std::vector<std::string>{"XML", "html"});  // from a harbour's network, in place of a file
  const Problem cut = read_file("<gpx>\n<wpt lat=\"1\" lon=\"1\">\n<name>A").problem();
  CHECK(cut.fault == Fault::file_broken);
  CHECK(cut.numbers == std::vector<double>{3});
  CHECK(fault(gpx("&unknown;")) == Fault::file_broken);
  CHECK(fault(gpx("<wpt lat=\"1\" lat=\"2\" lon=\"1\"/>")) == Fault::file_broken);
  CHECK(fault("\x89PNG\r\n\x1A\n" + std::string(100, '\0')) == Fault::file_unknown);
  CHECK(fault("") == Fault::file_unknown);
  CHECK(fault(std::string(65'000'000, ' ')) == Fault::file_too_long);
  std::string many;
  for (int i = 0; i < 21'000; ++i) many += "<wpt lat=\"1\" lon=\"1\"/>";
  const MarksAndLines all = taken(gpx(many));
  CHECK(all.marks.size() == k_most_marks);
  CHECK(all.left_out_count == 1'000);
  CHECK(all.left_out.size() == k_most_left_out);
}

TEST_CASE("GPX: what is written of any sheet obeys the schema, and comes back") {
  for (int seed = 1; seed <= 60; ++seed) {
    Random random(static_cast<std::uint64_t>(seed));
    const Document document = random_document(random, 60);
    const MarksAndLines all = marks_and_lines_of(document);
    const std::string text = gpx_text(all);
    CAPTURE(text);
    GpxCounts counts;
    const Result<MarksAndLines> read = read_gpx(text, counts);
    REQUIRE(read.ok());
    CHECK(!read->departure);
    CHECK(counts.wpt == document.marks.size());
    CHECK(counts.rte == all.lines.size());
    REQUIRE(read->marks.size() == all.marks.size());
    for (std::size_t i = 0; i < all.marks.size(); ++i) {
      CHECK(read->marks[i].at == all.marks[i].at);
      CHECK(read->marks[i].kind == all.marks[i].kind);
      CHECK(read->marks[i].radius_nm == all.marks[i].radius_nm);
      CHECK(read->marks[i].height_m == all.marks[i].height_m);
    }
    std::size_t legs = 0;
    for (const FileLine& line : read->lines) legs += line.points.size() - 1;
    CHECK(legs == document.legs.size());
  }
}
