#include "core/base/arc_entry.h"

namespace fogsheet {

namespace {

using Kind = EntryToken::Kind;

// Degrees, minutes, seconds by the sign or word after the number; -1 for no such sign.
int part_of(const EntryToken& token) {
  if (token.kind == Kind::degree) return 0;
  if (token.kind == Kind::minute) return 1;
  if (token.kind == Kind::second) return 2;
  if (token.kind != Kind::word) return -1;
  if (token.word == "deg" || token.word == "degrees" || token.word == "d") return 0;
  if (token.word == "min" || token.word == "minutes") return 1;
  if (token.word == "sec" || token.word == "seconds") return 2;
  return -1;
}

class ArcReader {
 public:
  ArcReader(std::string_view what, std::string_view text, std::span<const EntryToken> tokens) : what_(what), text_(text), tokens_(tokens) {}

  Result<ArcEntry> read(RunOn run_on) {
    if (tokens_.empty()) return missing("number", text_.size());
    arc_.begin = tokens_.front().begin;
    arc_.end = tokens_.back().end;
    while (at_ < tokens_.size()) {
      if (std::optional<Problem> problem = read_next()) return *problem;
    }
    if (arc_.parts == 0) return missing("number", arc_.end);
    if (run_on != RunOn::never && arc_.parts == 1 && !arc_.word.empty()) split_run_on(static_cast<int>(run_on));
    if (arc_.parts > 1 && parts_[1] >= 60) return out_of_range(Fault::minutes_out_of_range, 1);
    if (arc_.parts > 2 && parts_[2] >= 60) return out_of_range(Fault::seconds_out_of_range, 2);
    arc_.size_deg = parts_[0] + parts_[1] / 60 + parts_[2] / 3600;
    return arc_;
  }

 private:
  Problem unreadable(const EntryToken& token) const { return unreadable_entry(what_, text_, token.begin, token.end); }

  Problem missing(const char* part, std::size_t at) const {
    return {.fault = Fault::entry_part_missing, .texts = {std::string(what_), part}, .begin = at, .end = at};
  }

  Problem twice(const char* part, const EntryToken& token) const {
    return {.fault = Fault::entry_part_twice, .texts = {std::string(what_), part}, .begin = token.begin, .end = token.end};
  }

  Problem out_of_range(Fault fault, int part) const {
    return {.fault = fault, .texts = {std::string(what_)}, .numbers = {parts_[part], 60}, .begin = begins_[part], .end = ends_[part]};
  }

  std::optional<Problem> read_next() {
    const EntryToken& token = tokens_[at_];
    // A word ends the angle: what follows it makes the word the thing that has no meaning there.
    if (word_after_number_ && token.kind != Kind::word) return unreadable(tokens_[at_ - 1]);
    switch (token.kind) {
      case Kind::number:
        return read_part();
      case Kind::plus:
      case Kind::minus:
        return read_sign();
      case Kind::word:
        return read_word();
      default:
        return unreadable(token);
    }
  }

  std::optional<Problem> read_sign() {
    const EntryToken& token = tokens_[at_++];
    if (arc_.sign) return twice("sign", token);
    if (!arc_.word.empty()) return twice("hemisphere", token);
    if (arc_.parts > 0) return unreadable(token);
    arc_.sign = token.kind == Kind::minus ? -1 : 1;
    return std::nullopt;
  }

  std::optional<Problem> read_word() {
    const EntryToken& token = tokens_[at_++];
    if (!arc_.word.empty() || arc_.sign) return twice("hemisphere", token);
    arc_.word = token.word;
    arc_.word_begin = token.begin;
    arc_.word_end = token.end;
    word_after_number_ = arc_.parts > 0;
    return std::nullopt;
  }

  std::optional<Problem> read_part() {
    const EntryToken& token = tokens_[at_++];
    const bool glued = at_ >= 2 && tokens_[at_ - 2].kind == Kind::number && !token.after_space;
    if (glued || decimals_seen_ || arc_.parts == 3) return unreadable(token);
    int part = arc_.parts;
    if (at_ < tokens_.size() && part_of(tokens_[at_]) >= 0) {
      part = part_of(tokens_[at_++]);
      if (part < arc_.parts) return unreadable(tokens_[at_ - 1]);
      if (part > arc_.parts) return missing(arc_.parts == 0 ? "degrees" : "minutes", token.begin);
    }
    if (part == 0) arc_.whole_digits = token.number.whole_digits;
    parts_[part] = token.number.value;
    begins_[part] = token.begin;
    ends_[part] = token.end;
    decimals_seen_ = token.number.has_mark;
    arc_.parts = part + 1;
    return std::nullopt;
  }

  // 5012.34 -> 50 12.34, 501220.4 -> 50 12 20.4
  void split_run_on(int degree_digits) {
    const int further = arc_.whole_digits - degree_digits;
    if (further != 2 && further != 4) return;
    const double all = parts_[0];
    const double hundred_fold = further == 2 ? 100 : 10'000;
    const int degrees = static_cast<int>(all / hundred_fold);
    const double rest = all - degrees * hundred_fold;
    parts_[0] = degrees;
    if (further == 2) {
      parts_[1] = rest;
    } else {
      parts_[1] = static_cast<int>(rest / 100);
      parts_[2] = rest - parts_[1] * 100;
    }
    arc_.parts = further == 2 ? 2 : 3;
    for (int part = 1; part < arc_.parts; ++part) {
      begins_[part] = begins_[0];
      ends_[part] = ends_[0];
    }
  }

  std::string_view what_;
  std::string_view text_;
  std::span<const EntryToken> tokens_;
  std::size_t at_ = 0;
  ArcEntry arc_;
  double parts_[3] = {0, 0, 0};
  std::size_t begins_[3] = {0, 0, 0};
  std::size_t ends_[3] = {0, 0, 0};
  bool decimals_seen_ = false;
  bool word_after_number_ = false;
};

}  // namespace

Result<ArcEntry> read_arc(std::string_view what, std::string_view text, std::span<const EntryToken> tokens, RunOn run_on) {
  return ArcReader(what, text, tokens).read(run_on);
}

}  // namespace fogsheet
