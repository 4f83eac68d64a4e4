#include "core/positions/iso6709.h"

#include "core/base/number_text.h"

namespace fogsheet {

namespace {

constexpr std::string_view k_what = "position";
constexpr std::string_view k_system_mark = "CRS";
constexpr std::string_view k_system_characters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_-.:";

enum class Form { degrees, minutes, seconds };

// Walks through the text once; the first thing wrong is the problem.
class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  Result<Iso6709> read() {
    if (text_.empty()) return Problem{.fault = Fault::entry_empty, .texts = {std::string(k_what)}};
    Iso6709 read;
    const Result<Coordinate> lat = coordinate("latitude", 2, 90, Fault::latitude_out_of_range);
    if (!lat.ok()) return lat.problem();
    const Result<Coordinate> lon = coordinate("longitude", 3, 180, Fault::longitude_out_of_range);
    if (!lon.ok()) return lon.problem();
    if (lon->form != lat->form) return unreadable(lon->begin, at_);
    read.position = {.lat_deg = lat->deg, .lon_deg = lon->deg};
    if (is_sign(at_)) {
      const std::size_t begin = at_++;
      const auto size = scan_decimal(rest());
      if (!size || size->whole_digits == 0 || (size->has_mark && size->decimals == 0)) return unreadable(begin, at_);
      read.height_m = text_[begin] == '-' ? -size->value : size->value;
      at_ += size->length;
      if (rest().substr(0, k_system_mark.size()) != k_system_mark) return missing("reference system");
    }
    if (rest().substr(0, k_system_mark.size()) == k_system_mark) {
      at_ += k_system_mark.size();
      const std::size_t end = std::min(text_.find_first_not_of(k_system_characters, at_), text_.size());
      if (end == at_) return missing("reference system");
      read.system = text_.substr(at_, end - at_);
      at_ = end;
    }
    if (rest().empty()) return missing("/");
    if (rest() != "/") return unreadable(at_, text_.size());
    return read;
  }

 private:
  struct Coordinate {
    double deg;
    Form form;
    std::size_t begin;
  };

  std::string_view rest() const { return text_.substr(at_); }
  bool is_sign(std::size_t at) const { return at < text_.size() && (text_[at] == '+' || text_[at] == '-'); }

  Problem missing(const char* part) const {
    return {.fault = Fault::entry_part_missing, .texts = {std::string(k_what), part}, .begin = at_, .end = at_};
  }

  Problem unreadable(std::size_t begin, std::size_t end) const {
    return {
        .fault = Fault::entry_unreadable, .texts = {std::string(k_what), std::string(text_.substr(begin, end - begin))}, .begin = begin, .end = end};
  }

  Result<Coordinate> coordinate(const char* name, int degree_digits, double bound_deg, Fault out_of_range) {
    const std::size_t begin = at_;
    if (rest().empty()) return missing(name);
    if (!is_sign(at_)) return unreadable(at_, at_ + 1);
    const auto number = scan_decimal(text_.substr(begin + 1));
    at_ += 1 + (number ? number->length : 0);
    if (!number || (number->has_mark && number->decimals == 0)) return unreadable(begin, at_);
    const int further_digits = number->whole_digits - degree_digits;
    if (further_digits != 0 && further_digits != 2 && further_digits != 4) return unreadable(begin, at_);
    const Form form = further_digits == 0 ? Form::degrees : further_digits == 2 ? Form::minutes : Form::seconds;

    // The parts stand at fixed places; the last one carries the decimals.
    std::string_view digits = text_.substr(begin + 1, number->length);
    double parts[3] = {0, 0, 0};
    std::size_t width = static_cast<std::size_t>(degree_digits);
    for (int part = 0; part <= static_cast<int>(form); ++part) {
      const bool last = part == static_cast<int>(form);
      parts[part] = scan_decimal(last ? digits : digits.substr(0, width))->value;
      if (!last) digits.remove_prefix(width);
      width = 2;
    }
    if (parts[1] >= 60) return Problem{.fault = Fault::minutes_out_of_range, .texts = {name}, .numbers = {parts[1], 60}, .begin = begin, .end = at_};
    if (parts[2] >= 60) return Problem{.fault = Fault::seconds_out_of_range, .texts = {name}, .numbers = {parts[2], 60}, .begin = begin, .end = at_};
    const double size_deg = parts[0] + parts[1] / 60 + parts[2] / 3600;
    const double deg = text_[begin] == '-' ? 0 - size_deg : size_deg;
    if (size_deg > bound_deg) return Problem{.fault = out_of_range, .numbers = {deg, bound_deg}, .begin = begin, .end = at_};
    return Coordinate{.deg = deg, .form = form, .begin = begin};
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

// 0.0001' as degrees of that many digits and minutes.
std::string print_coordinate(std::int32_t grid, int degree_digits) {
  constexpr std::int32_t k_per_minute = 10'000;
  const std::int32_t size = grid < 0 ? -grid : grid;
  const std::int32_t minutes = size / k_per_minute;
  return (grid < 0 ? "-" : "+") + print_padded(minutes / 60, degree_digits) + print_padded(minutes % 60, 2) + "." +
         print_padded(size % k_per_minute, 4);
}

}  // namespace

Result<Iso6709> parse_iso6709(std::string_view text) { return Reader(text).read(); }

std::string print_iso6709(GridPosition position) { return print_coordinate(position.lat, 2) + print_coordinate(position.lon, 3) + "/"; }

}  // namespace fogsheet
