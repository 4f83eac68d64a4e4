#include "shell/arguments.h"

#include <cmath>

#include "shell/words.h"

namespace fogsheet {
namespace {

/// The number that an id is written as; 0, which names nothing, for any other text.
std::uint32_t id_number(const std::string& text) {
  if (text.empty() || text.size() > 10) return 0;
  std::uint64_t number = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return 0;
    number = number * 10 + static_cast<std::uint64_t>(c - '0');
  }
  return number <= 0xFFFFFFFFu ? static_cast<std::uint32_t>(number) : 0;
}

}  // namespace

Result<double> number_argument(const Value& arguments, const char* name) {
  const double* number = arguments[name].number();
  if (!number || !std::isfinite(*number)) return Problem{.fault = Fault::number_missing, .texts = {name}};
  return *number;
}

Result<std::string> text_argument(const Value& arguments, const char* name) {
  const std::string* text = arguments[name].text();
  if (!text) return Problem{.fault = Fault::entry_empty, .texts = {name}};
  return *text;
}

Result<std::optional<double>> optional_number(const Value& arguments, const char* name) {
  if (arguments[name].is_null()) return std::optional<double>();
  const Result<double> number = number_argument(arguments, name);
  if (!number) return number.problem();
  return std::optional(*number);
}

Result<std::optional<std::string>> optional_text(const Value& arguments, const char* name) {
  if (arguments[name].is_null()) return std::optional<std::string>();
  const Result<std::string> text = text_argument(arguments, name);
  if (!text) return text.problem();
  return std::optional(*text);
}

Result<Date> date_argument(const Value& arguments, const char* name) {
  const Result<std::string> text = text_argument(arguments, name);
  if (!text) return text.problem();
  return parse_iso_date(*text);
}

Result<MarkId> mark_argument(const Document& document, const Value& arguments, const char* name) {
  const Result<std::string> text = text_argument(arguments, name);
  if (!text) return text.problem();
  const MarkId id{id_number(*text)};
  if (!document.marks.find(id)) return Problem{.fault = Fault::mark_unknown, .texts = {*text}};
  return id;
}

Result<LegId> leg_argument(const Document& document, const Value& arguments, const char* name) {
  const Result<std::string> text = text_argument(arguments, name);
  if (!text) return text.problem();
  const LegId id{id_number(*text)};
  if (!document.legs.find(id)) return Problem{.fault = Fault::leg_unknown, .texts = {*text}};
  return id;
}

Result<RoseId> rose_argument(const Document& document, const Value& arguments, const char* name) {
  const Result<std::string> text = text_argument(arguments, name);
  if (!text) return text.problem();
  const RoseId id{id_number(*text)};
  if (!document.roses.find(id)) return Problem{.fault = Fault::rose_unknown, .texts = {*text}};
  return id;
}

Result<MarkKind> kind_argument(const Value& arguments, const char* name) {
  const Result<std::string> text = text_argument(arguments, name);
  if (!text) return text.problem();
  const std::optional<MarkKind> kind = mark_kind_named(*text);
  if (!kind) return Problem{.fault = Fault::kind_unknown, .texts = {*text}};
  return *kind;
}

Result<std::size_t> place_argument(const Value& arguments, const char* name) {
  const Result<double> place = number_argument(arguments, name);
  if (!place) return place.problem();
  if (*place < 0 || *place > static_cast<double>(k_most_marks)) return Problem{.fault = Fault::number_out_of_range, .texts = {name}, .numbers = {*place, 0, static_cast<double>(k_most_marks)}};
  return static_cast<std::size_t>(*place);
}

Result<TrueDirection> direction_argument(const Session& session, const Value& arguments, const char* name) {
  const Result<double> deg = number_argument(arguments, name);
  if (!deg) return deg.problem();
  if (*deg < 0 || *deg >= 360) return Problem{.fault = Fault::direction_out_of_range, .numbers = {*deg}};
  const std::string* reference = arguments["reference"].text();
  if (!reference || *reference == "true") return TrueDirection(*deg);
  const std::optional<Variation>& used = session.facts().variation.used;
  if (*reference != "magnetic" || !used) return Problem{.fault = Fault::reference_not_usable, .texts = {*reference}};
  return to_true(MagneticDirection(*deg), *used);
}

Result<Reference> reference_argument(const Value& arguments, const char* name) {
  const Result<std::string> text = text_argument(arguments, name);
  if (!text) return text.problem();
  if (*text == "true") return Reference::true_north;
  if (*text == "magnetic") return Reference::magnetic;
  if (*text == "compass") return Reference::compass;
  return Problem{.fault = Fault::entry_unreadable, .texts = {name, *text}};
}

Value done() { return Value::object({{"ok", true}}); }
Value done_with(std::uint32_t id) { return Value::object({{"ok", true}, {"id", std::to_string(id)}}); }
Value refused(const Problem& problem) { return Value::object({{"error", words::sentence(problem)}}); }

}  // namespace fogsheet
