#include "shell/keeper/backup.h"

#include <algorithm>
#include <charconv>

#include "core/base/utf8.h"
#include "core/formats/bytes.h"
#include "core/formats/crc32.h"

namespace fogsheet {
namespace {

constexpr std::uint64_t k_backup_format = 1;
constexpr std::uint8_t k_sign[] = {0x1E, 'r', 'o', 'w'};
// In place of a part.
constexpr std::uint64_t k_about = 255;        // when the file was made, and how many records it holds
constexpr std::uint64_t k_photographs = 254;  // what lies behind the records, the last of them
constexpr std::size_t k_most_rows = 50'000;  // past what anyone draws: what a file can make of a few bytes each must fit in memory

std::span<const std::uint8_t> bytes_of(std::string_view text) { return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()}; }

void write_row(ByteWriter& out, std::uint64_t part, std::uint64_t sheet, std::uint64_t sequence, std::string_view title, std::span<const std::uint8_t> body) {
  ByteWriter head;
  head.whole(part);
  head.whole(sheet);
  head.whole(sequence);
  head.text(fitting(title, k_most_name_bytes));
  head.whole(body.size());
  out.raw(k_sign);
  out.raw(head.bytes());
  out.raw(checksum_bytes(head.bytes()));
  out.raw(body);
}

/// "fogsheets:1 0000012345 1a2b3c4d": the format, and how many bytes are records, which is sure where its checksum is right.
constexpr std::size_t k_record_figures = 10;
constexpr std::size_t k_checksum_figures = 8;

std::string figures(std::uint64_t value, int base, std::size_t count) {
  char text[24];
  const std::string written(text, std::to_chars(std::begin(text), std::end(text), value, base).ptr);
  return std::string(count - std::min(count, written.size()), '0') + written;
}

std::string first_line(std::optional<std::uint64_t> record_bytes) {
  std::string line = std::string(k_backup_begin) + std::to_string(k_backup_format);
  if (record_bytes) {
    const std::string count = figures(*record_bytes, 10, k_record_figures);
    line += ' ' + count + ' ' + figures(crc32(bytes_of(count)), 16, k_checksum_figures);
  }
  return line + '\n';
}

StoreBytes written(const std::vector<PhotographInFile>& photographs) {
  ByteWriter out;
  out.whole(photographs.size());
  for (const PhotographInFile& each : photographs) {
    out.whole(each.sheet.value);
    out.text(fitting(each.name, k_most_name_bytes));
    out.whole(each.placing.size());
    out.raw(each.placing);
    out.whole(each.bytes);
    out.whole(each.checksum);
  }
  return framed(out.bytes());
}

struct Row {
  std::uint64_t part = 0;
  std::uint64_t sheet = 0;
  std::uint64_t sequence = 0;
  std::string title;
  std::span<const std::uint8_t> body;  // what is left of it
  bool is_cut = false;
};

/// The row whose sign ends where `bytes` begin; none when its head is not whole.
std::optional<Row> row_from(std::span<const std::uint8_t> bytes) {
  ByteReader in(bytes);
  Row row{.part = in.whole(), .sheet = in.whole(), .sequence = in.whole()};
  row.title = in.text(k_most_name_bytes);
  const std::uint64_t length = in.whole();
  const std::size_t head = bytes.size() - in.left();
  const std::span<const std::uint8_t> checksum = in.raw(k_checksum_bytes);
  if (!in.ok() || crc32(bytes.first(head)) != checksum_of(checksum) || !is_utf8(row.title)) return std::nullopt;
  row.is_cut = length > in.left();
  row.body = in.raw(std::min<std::uint64_t>(length, in.left()));
  return row;
}

class Reading {
 public:
  explicit Reading(std::span<const std::uint8_t> file) : file_(file), most_looked_at_(4 * file.size()) {}

  /// Whether the row was whole: what is not may hide the beginning of the next.
  bool take(const Row& row) {
    ++rows_;
    looked_at_ += row.body.size();
    if (row.part == k_about) return take_about(row);
    if (row.part == k_photographs) return take_photographs(row);
    const bool is_whole = !row.is_cut && unframed(row.body).ok();
    const bool is_boat = row.part == static_cast<std::uint64_t>(StorePart::desk) && row.sheet != 0;
    if (is_boat) {
      if (Result<BoatRecord> boat = read_boat_record(row.body)) back_.boats.push_back(std::move(boat).value());
      else amiss(row, boat.problem());
    } else if (row.part == static_cast<std::uint64_t>(StorePart::sheets)) {
      take_sheet(row);
    } else {
      ++back_.set_aside;
    }
    return is_whole;
  }

  /// Rows within rows, as lengths that lie have them, would be looked through again and again.
  bool is_full() const { return rows_ > k_most_rows || looked_at_ > most_looked_at_; }

  /// Behind the list of photographs there are no records.
  bool is_at_end() const { return !back_.photographs.empty(); }

  Result<Backup> done() && {
    if (rows_ == 0) return Fault::file_unknown;
    const std::size_t found = rows_ - (is_told_ ? 1 : 0);
    back_.missing = is_told_ ? told_ - std::min<std::size_t>(told_, found) : 1;
    return std::move(back_);
  }

 private:
  bool take_about(const Row& row) {
    const Result<std::span<const std::uint8_t>> body = unframed(row.body);
    if (!body) return false;
    ByteReader in(*body);
    back_.made_ms = in.signed_whole();
    told_ = static_cast<std::size_t>(in.whole());
    is_told_ = in.ok();
    return true;
  }

  bool take_photographs(const Row& row) {
    const Result<std::span<const std::uint8_t>> body = row.is_cut ? Fault::text_checksum : unframed(row.body);
    if (!body) {
      back_.amiss.push_back({Backup::Amiss::Kind::unreadable, row.title});
      return false;
    }
    ByteReader in(*body);
    std::uint64_t at = static_cast<std::uint64_t>(row.body.data() + row.body.size() - file_.data());
    std::vector<PhotographInFile> listed;
    for (std::uint64_t left = std::min<std::uint64_t>(in.whole(), k_most_rows); left > 0 && in.ok(); --left) {
      PhotographInFile each{.sheet = {in.whole()}, .name = std::string(in.text(k_most_name_bytes))};
      const std::span<const std::uint8_t> placing = in.raw(in.whole());
      each.placing.assign(placing.begin(), placing.end());
      each.bytes = std::min(in.whole(), k_most_photograph_bytes);
      each.checksum = static_cast<std::uint32_t>(in.whole());
      each.at = at;
      at += each.bytes;
      if (in.ok() && is_utf8(each.name)) listed.push_back(std::move(each));
    }
    back_.photographs = std::move(listed);
    return true;
  }

  void take_sheet(const Row& row) {
    Result<SheetRecord> sheet = read_sheet_record(row.body);
    if (!sheet) {
      std::optional<SheetRecord> rest = sheet.problem().fault == Fault::text_newer ? std::nullopt : salvaged(row.body);
      if (!rest || rest->key.value != row.sheet) return amiss(row, sheet.problem());
      back_.amiss.push_back({Backup::Amiss::Kind::past_lost, row.title});
      sheet = std::move(*rest);
    }
    back_.sheets.push_back(std::move(sheet).value());
  }

  void amiss(const Row& row, const Problem& why) { back_.amiss.push_back({why.fault == Fault::text_newer ? Backup::Amiss::Kind::newer : Backup::Amiss::Kind::unreadable, row.title}); }

  std::span<const std::uint8_t> file_;
  Backup back_;
  std::size_t rows_ = 0;
  std::size_t looked_at_ = 0;  // bytes
  std::size_t most_looked_at_ = 0;
  std::size_t told_ = 0;
  bool is_told_ = false;
};

/// The format that the file says it has; this one where that can't be read any more.
std::uint64_t format_of(std::span<const std::uint8_t> bytes) {
  const std::string_view head(reinterpret_cast<const char*>(bytes.data()), std::min<std::size_t>(bytes.size(), 40));
  std::uint64_t format = k_backup_format;
  if (head.starts_with(k_backup_begin)) std::from_chars(head.data() + k_backup_begin.size(), head.data() + head.size(), format);
  return format;
}

}  // namespace

std::size_t Backup::cut_off(double file_bytes) const {
  return static_cast<std::size_t>(std::count_if(photographs.begin(), photographs.end(), [&](const PhotographInFile& each) { return static_cast<double>(each.at + each.bytes) > file_bytes; }));
}

StoreBytes backup_bytes(const std::vector<BackupRow>& rows, std::int64_t made_ms, const std::vector<PhotographInFile>& photographs) {
  const bool has_photographs = !photographs.empty();
  ByteWriter about;
  about.signed_whole(made_ms);
  about.whole(rows.size() + (has_photographs ? 1 : 0));
  ByteWriter records;
  write_row(records, k_about, 0, 0, "", framed(about.bytes()));
  for (const auto& [record, title] : rows) write_row(records, static_cast<std::uint64_t>(record.part), record.sheet, record.sequence, title, record.bytes);
  if (has_photographs) write_row(records, k_photographs, 0, 0, "photographs of charts", written(photographs));
  const std::size_t line_bytes = first_line(0).size();
  ByteWriter out;
  out.raw(bytes_of(first_line(has_photographs ? std::optional<std::uint64_t>(line_bytes + records.bytes().size()) : std::nullopt)));
  out.raw(records.bytes());
  return out.bytes();
}

std::optional<std::uint64_t> backup_record_bytes(std::string_view head) {
  const std::string_view line = head.substr(0, head.find('\n'));
  const std::size_t behind_format = line.find(' ');
  if (!line.starts_with(k_backup_begin) || behind_format == std::string_view::npos) return std::nullopt;
  const std::string_view said = line.substr(behind_format + 1);
  std::uint64_t count = 0;
  std::from_chars(said.data(), said.data() + std::min(said.size(), k_record_figures), count);
  if (!first_line(count).ends_with(std::string(line.substr(behind_format)) + '\n')) return std::nullopt;
  return count;
}

Result<Backup> read_backup(std::span<const std::uint8_t> bytes) {
  if (const std::uint64_t format = format_of(bytes); format > k_backup_format) return Problem{.fault = Fault::text_newer, .numbers = {static_cast<double>(format), static_cast<double>(k_backup_format)}};
  Reading reading(bytes);
  for (auto at = bytes.begin();;) {
    at = std::search(at, bytes.end(), std::begin(k_sign), std::end(k_sign));
    if (at == bytes.end() || reading.is_full() || reading.is_at_end()) break;
    at += std::size(k_sign);
    const std::optional<Row> row = row_from({at, bytes.end()});
    if (row && reading.take(*row)) at = bytes.begin() + (row->body.data() + row->body.size() - bytes.data());
  }
  return std::move(reading).done();
}

}  // namespace fogsheet
