#include "core/formats/document_text.h"

#include "core/base/utf8.h"
#include "core/document/integrity.h"
#include "core/formats/base64url.h"
#include "core/formats/bytes.h"
#include "core/formats/crc32.h"
#include "core/formats/document_sections.h"
#include "core/formats/packed_document.h"

namespace fogsheet {
namespace {

// The bytes: sections in the order of their numbers, each a tag, a length and that many bytes; then the checksum of all
// before it, least byte first. A tag is twice the section's number, and one more when a reader that doesn't know it may
// leave it out. What is written today has one section, with all of the document packed; texts of before have several.
constexpr std::uint64_t k_may_be_left_out = 1;
constexpr std::size_t k_most_format_digits = 6;

std::uint64_t tag_of(Section section) { return static_cast<std::uint64_t>(section) << 1; }

// A text that was meant for us: where its payload begins, or why not.
Result<std::size_t> payload_start(std::string_view text) {
  std::size_t digits = 0;
  double format = 0;
  for (; digits < text.size() && text[digits] >= '0' && text[digits] <= '9'; ++digits) format = format * 10 + (text[digits] - '0');
  const bool ours = digits > 0 && digits <= k_most_format_digits && text[0] != '0' && digits < text.size() && text[digits] == ':';
  if (!ours) return Fault::text_not_ours;
  if (format > k_document_format) return Problem{.fault = Fault::text_newer, .numbers = {format, k_document_format}};
  return digits + 1;
}

bool sections_fit(std::span<const std::uint8_t> body) {
  ByteReader in(body);
  while (in.ok() && !in.at_end()) {
    in.whole();
    in.raw(in.whole());
  }
  return in.ok();
}

const Section* section_of(std::uint64_t tag) {
  for (const Section& section : k_sections)
    if (tag_of(section) == tag) return &section;
  return nullptr;
}

Problem missing(Section section) {
  return {.fault = Fault::text_missing_section, .texts = {std::string(section_name(section))}};
}

Problem out_of_order(std::uint64_t number) { return {.fault = Fault::text_section, .texts = {"order"}, .numbers = {static_cast<double>(number)}}; }

Result<Document> read_sections(std::span<const std::uint8_t> body, bool* left_out) {
  Document document;
  bool seen[std::size(k_sections) + 1] = {};
  std::uint64_t last_number = 0;
  ByteReader in(body);
  while (!in.at_end()) {
    const std::uint64_t tag = in.whole();
    const std::span<const std::uint8_t> bytes = in.raw(in.whole());
    if (!in.ok()) return Fault::text_cut_short;
    const std::uint64_t number = tag >> 1;
    if (number <= last_number) return out_of_order(number);
    last_number = number;
    const Section* section = section_of(tag);
    if (!section) {
      if (left_out) *left_out = true;
      if (tag & k_may_be_left_out) continue;
      // Only a later format can have a section that must not be left out.
      return Problem{.fault = Fault::text_newer, .numbers = {k_document_format + 1, k_document_format}};
    }
    // A packed text has all in one section; a plain one begins with its sheet.
    const bool is_packed = *section == Section::packed;
    const bool has_sheet = seen[static_cast<int>(Section::sheet)];
    if (is_packed && has_sheet) return out_of_order(number);
    if (!is_packed && !has_sheet && *section != Section::sheet) return missing(Section::sheet);
    const Result<Done> read = read_section(*section, bytes, document);
    if (!read) return read.problem();
    for (const Section held : k_sections)
      if (held == *section || (is_packed && is_required(held))) seen[static_cast<int>(held)] = true;
  }
  for (const Section section : k_sections)
    if (is_required(section) && !seen[static_cast<int>(section)]) return missing(section);
  const Result<Done> whole = check_document(document);
  if (!whole) return whole.problem();
  return document;
}

}  // namespace

std::string encode_document(const Document& document) {
  const std::vector<std::uint8_t> packed = pack(document);
  ByteWriter out;
  out.whole(tag_of(Section::packed));
  out.whole(packed.size());
  out.raw(packed);
  out.raw(checksum_bytes(out.bytes()));
  return std::to_string(k_document_format) + ":" + base64url_encode(out.bytes());
}

Result<Document> decode_document(std::string_view text, bool* left_out) {
  if (text.size() > k_most_text_bytes)
    return Problem{.fault = Fault::text_too_long,
                   .numbers = {static_cast<double>(text.size()), static_cast<double>(k_most_text_bytes)}};
  std::string_view inner = trimmed(text);
  if (inner.empty()) return Fault::text_empty;
  if (const std::size_t hash = inner.find('#'); hash != std::string_view::npos) inner.remove_prefix(hash + 1);
  const Result<std::size_t> start = payload_start(inner);
  if (!start) return start.problem();
  inner.remove_prefix(*start);
  const auto begin = static_cast<std::size_t>(inner.data() - text.data());
  const std::size_t end = begin + inner.size();

  const Result<std::vector<std::uint8_t>> decoded = base64url_decode(inner);
  if (!decoded) {
    Problem problem = decoded.problem();
    problem.begin += begin;
    problem.end += begin;
    return problem;
  }
  const std::span<const std::uint8_t> bytes = *decoded;
  if (bytes.size() <= k_checksum_bytes) return Problem{.fault = Fault::text_cut_short, .begin = end, .end = end};
  const std::span<const std::uint8_t> body = bytes.first(bytes.size() - k_checksum_bytes);
  if (checksum_of(bytes) != crc32(body)) {
    if (!sections_fit(body)) return Problem{.fault = Fault::text_cut_short, .begin = end, .end = end};
    return Problem{.fault = Fault::text_checksum, .begin = begin, .end = end};
  }
  return read_sections(body, left_out);
}

}  // namespace fogsheet
