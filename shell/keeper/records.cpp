#include "shell/keeper/records.h"

#include <algorithm>
#include <utility>

#include "core/formats/boat_fields.h"
#include "core/formats/bytes.h"
#include "core/formats/crc32.h"
#include "core/formats/document_text.h"

namespace fogsheet {
namespace {

// Far past what is ever reached, and far below where a count would begin again.
constexpr std::uint64_t k_most_states = 1'000'000'000;
constexpr std::uint64_t k_most_commits = std::uint64_t{1} << 52;

constexpr std::uint64_t k_most_act = 10'000;  // an act of a later program has no words here, and is a step all the same

void write_label(ByteWriter& out, const Label& label) {
  out.whole(static_cast<std::uint64_t>(label.act));
  out.text(label.subject);
}

bool read_label(ByteReader& in, Label& label) {
  const std::uint64_t act = in.whole();
  label = {static_cast<Act>(act <= k_most_act ? act : 0), std::string(in.text(k_most_note_bytes))};
  return in.ok() && act <= k_most_act;
}

void write_state(ByteWriter& out, const SheetState& state) {
  out.signed_whole(state.changed_ms);
  out.signed_whole(state.removed_ms);
  out.whole(state.under ? state.under->sheet.value : 0);
  if (!state.under) return;
  write_label(out, state.under->label);
  out.whole(state.under->commits);
  out.whole(state.under->state);
}

bool read_state(ByteReader& in, SheetState& state) {
  state.changed_ms = in.signed_whole();
  state.removed_ms = in.signed_whole();
  const SheetKey under{in.whole()};
  if (under == SheetKey{}) return in.ok();
  state.under = TakenOff{under, {}};
  if (!read_label(in, state.under->label)) return false;
  state.under->commits = in.whole();
  state.under->state = static_cast<std::size_t>(in.whole());
  return in.ok();
}

void write_steps(ByteWriter& out, const std::vector<KeptStep>& steps) {
  out.whole(steps.size());
  for (const KeptStep& step : steps) {
    write_label(out, step.label);
    out.whole(step.difference.size());
    out.raw(step.difference);
  }
}

bool read_steps(ByteReader& in, std::vector<KeptStep>& steps) {
  const std::uint64_t count = in.whole();
  if (!in.ok() || count > std::min<std::uint64_t>(in.left(), History::k_most_steps)) return false;
  steps.resize(static_cast<std::size_t>(count));
  for (KeptStep& step : steps) {
    if (!read_label(in, step.label)) return false;
    const std::span<const std::uint8_t> difference = in.raw(in.whole());
    step.difference.assign(difference.begin(), difference.end());
  }
  return in.ok();
}

template <class Doc>
void write_numbers(ByteWriter& out, const KeptHistoryOf<Doc>& history) {
  out.whole(history.first_state);
  out.whole(history.state);
  out.whole(history.commits);
  out.whole(history.revision);
}

template <class Doc>
bool read_numbers(ByteReader& in, KeptHistoryOf<Doc>& history) {
  const std::uint64_t first_state = in.whole(), state = in.whole();
  history.first_state = static_cast<std::size_t>(first_state);
  history.state = static_cast<std::size_t>(state);
  history.commits = in.whole();
  history.revision = in.whole();
  return in.ok() && first_state <= k_most_states && state <= k_most_states && history.commits <= k_most_commits && history.revision <= k_most_commits;
}

template <class Doc>
bool is_present_among_steps(const KeptHistoryOf<Doc>& history) {
  return history.state >= history.first_state && history.state - history.first_state <= history.steps.size();
}

void write_boat(ByteWriter& out, const Boat& boat) {
  const std::vector<std::uint8_t> bytes = bytes_of(boat);
  out.whole(bytes.size());
  out.raw(bytes);
}

bool read_boat(ByteReader& in, Boat& boat) {
  Result<Boat> read = boat_from(in.raw(in.whole()));
  if (!in.ok() || !read) return false;
  boat = std::move(read).value();
  return true;
}

Problem damaged() { return {.fault = Fault::text_checksum}; }

/// Faults: as of a record.
Result<Document> read_document(ByteReader& in, std::string* newer_text = nullptr) {
  const std::string text(in.text(k_most_text_bytes));
  bool left_out = false;
  Result<Document> document = decode_document(text, &left_out);
  if (!in.ok() || (!document && document.problem().fault != Fault::text_newer)) return damaged();
  if (left_out && newer_text) *newer_text = text;
  return document;
}

/// A sheet's key and present document stand first, so that a record that is damaged further on still gives them.
Result<Done> read_head(ByteReader& in, SheetRecord& record) {
  record.key.value = in.whole();
  Result<Document> now = read_document(in, &record.newer_text);
  if (!now) return now.problem();
  if (record.key == SheetKey{}) return damaged();
  record.history.now = std::move(now).value();
  return Done{};
}

}  // namespace

StoreBytes framed(std::span<const std::uint8_t> body) {
  ByteWriter out;
  out.whole(k_record_format);
  out.raw(body);
  out.raw(checksum_bytes(out.bytes()));
  return out.bytes();
}

// The format is believed before the checksum is looked at: a newer one may end otherwise.
Result<std::span<const std::uint8_t>> unframed(std::span<const std::uint8_t> bytes) {
  ByteReader in(bytes);
  const std::uint64_t format = in.whole();
  if (in.ok() && format > k_record_format) return Problem{.fault = Fault::text_newer, .numbers = {static_cast<double>(format), static_cast<double>(k_record_format)}};
  if (!in.ok() || format == 0 || in.left() < k_checksum_bytes) return damaged();
  if (crc32(bytes.first(bytes.size() - k_checksum_bytes)) != checksum_of(bytes)) return damaged();
  return in.raw(in.left() - k_checksum_bytes);
}

SheetState state_of(const SheetInDrawer& sheet) { return {sheet.changed_ms, sheet.removed_ms, sheet.under}; }

SheetRecord record_of(SheetInDrawer& sheet, std::uint64_t through) {
  // What a newer program put in goes along while the document is the one that it put it in.
  const bool is_as_it_came = !sheet.newer_text.empty() && [&] {
    const Result<Document> newer = decode_document(sheet.newer_text);
    return newer && *newer == sheet.history.now();
  }();
  return {.key = sheet.key, .through = through, .over = sheet.over, .state = state_of(sheet), .history = sheet.history.kept(), .newer_text = is_as_it_came ? sheet.newer_text : ""};
}

BoatRecord record_of(KeptBoat& boat) { return {.key = boat.key, .removed = boat.removed, .history = boat.history.kept()}; }

StoreBytes written(const BoatRecord& record) {
  const KeptHistoryOf<Boat>& history = record.history;
  ByteWriter out;
  out.whole(record.key.value);
  out.whole(record.removed ? 1 : 0);
  write_boat(out, history.now);
  write_numbers(out, history);
  write_steps(out, history.steps);
  if (!history.steps.empty()) write_boat(out, history.first);
  return framed(out.bytes());
}

Result<BoatRecord> read_boat_record(std::span<const std::uint8_t> bytes) {
  const Result<std::span<const std::uint8_t>> body = unframed(bytes);
  if (!body) return body.problem();
  ByteReader in(*body);
  BoatRecord record{.key = {in.whole()}, .removed = in.whole() == 1, .history = {}};
  KeptHistoryOf<Boat>& history = record.history;
  if (!read_boat(in, history.now) || !read_numbers(in, history) || !read_steps(in, history.steps) || !is_present_among_steps(history)) return damaged();
  if (!history.steps.empty() && !read_boat(in, history.first)) return damaged();
  if (!in.at_end() || record.key == BoatKey{}) return damaged();
  return record;
}

StoreBytes written(const SheetRecord& record) {
  const KeptHistory& history = record.history;
  ByteWriter out;
  out.whole(record.key.value);
  out.text(record.newer_text.empty() ? encode_document(history.now) : record.newer_text);
  out.whole(record.through);
  out.whole(record.over ? record.over->sheet.value : 0);
  if (record.over) write_label(out, record.over->label);
  write_state(out, record.state);
  write_numbers(out, history);
  write_steps(out, history.steps);
  if (!history.steps.empty()) out.text(encode_document(history.first));
  return framed(out.bytes());
}

Result<SheetRecord> read_sheet_record(std::span<const std::uint8_t> bytes) {
  const Result<std::span<const std::uint8_t>> body = unframed(bytes);
  if (!body) return body.problem();
  ByteReader in(*body);
  SheetRecord record;
  KeptHistory& history = record.history;
  if (const Result<Done> head = read_head(in, record); !head) return head.problem();
  record.through = in.whole();
  if (const SheetKey over{in.whole()}; over != SheetKey{}) {
    record.over = LaidOver{over, {}};
    if (!read_label(in, record.over->label)) return damaged();
  }
  if (!read_state(in, record.state)) return damaged();
  if (!read_numbers(in, history) || !read_steps(in, history.steps) || !is_present_among_steps(history)) return damaged();
  if (!history.steps.empty()) {
    Result<Document> first = read_document(in);
    if (!first) return first.problem();
    history.first = std::move(first).value();
  }
  if (!in.at_end()) return damaged();
  return record;
}

std::optional<SheetRecord> salvaged(std::span<const std::uint8_t> bytes) {
  ByteReader in(bytes);
  SheetRecord record;
  if (in.whole() != k_record_format || !read_head(in, record)) return std::nullopt;
  return record;
}

StoreBytes written(const JournalRecord& record) {
  ByteWriter out;
  out.whole(record.follows);
  write_state(out, record.state);
  out.whole(record.change.unchanged_to);
  write_steps(out, record.change.steps);
  out.whole(record.change.state);
  out.whole(record.change.commits);
  out.whole(record.change.revision);
  return framed(out.bytes());
}

Result<JournalRecord> read_journal_record(std::span<const std::uint8_t> bytes) {
  const Result<std::span<const std::uint8_t>> body = unframed(bytes);
  if (!body) return body.problem();
  ByteReader in(*body);
  JournalRecord record;
  record.follows = static_cast<std::uint32_t>(in.whole());
  if (!read_state(in, record.state)) return damaged();
  record.change.unchanged_to = static_cast<std::size_t>(in.whole());
  if (!read_steps(in, record.change.steps)) return damaged();
  record.change.state = static_cast<std::size_t>(in.whole());
  record.change.commits = in.whole();
  record.change.revision = in.whole();
  if (!in.at_end()) return damaged();
  return record;
}

}  // namespace fogsheet
