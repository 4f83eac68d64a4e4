// What has been typed into fields and is not yet part of the sheet: a form being filled in, or an entry that could not be
// taken, with the reason. Nothing typed is ever lost to a mistake.
#pragma once

#include <map>
#include <string>

namespace fogsheet {

/// What stood in the field in hand and had not been sent: it counts for nothing, and is to stand there again.
struct HalfTyped {
  std::string field;  // as the page finds it again; empty for none
  std::string text;
};

class Form {
 public:
  struct Entry {
    std::string text;
    std::string error;  // empty while nothing is wrong with it
  };

  /// Null when nothing was typed there, or it has become part of the sheet.
  const Entry* find(const std::string& field) const {
    const auto found = entries_.find(field);
    return found == entries_.end() ? nullptr : &found->second;
  }

  /// What was typed there, or what stands there when nothing was.
  std::string text(const std::string& field, std::string standing = {}) const {
    const Entry* entry = find(field);
    return entry ? entry->text : standing;
  }
  std::string error(const std::string& field) const {
    const Entry* entry = find(field);
    return entry ? entry->error : std::string();
  }

  void keep(const std::string& field, std::string text, std::string error = {}) { entries_[field] = {std::move(text), std::move(error)}; }

  /// Marks what was typed there, or the empty field, as wrong.
  void mark_wrong(const std::string& field, std::string error) { entries_[field].error = std::move(error); }

  void drop(const std::string& field) { entries_.erase(field); }
  void clear() { entries_.clear(); }
  bool empty() const { return entries_.empty(); }
  const std::map<std::string, Entry>& all() const { return entries_; }

 private:
  std::map<std::string, Entry> entries_;
};

}  // namespace fogsheet
