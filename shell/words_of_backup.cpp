#include "shell/words_of_backup.h"

#include <algorithm>

#include "shell/words.h"
#include "shell/words_of_files.h"

namespace fogsheet::words {
namespace {

std::string and_list(const std::string& one, const std::string& other) { return one.empty() || other.empty() ? one + other : one + " and " + other; }
std::string counted_photographs(std::size_t count) { return counted(count, "photograph of a chart", "photographs of charts"); }
std::string some(std::size_t count, const char* one, const char* many) { return count == 0 ? "" : counted(count, one, many); }

}  // namespace

std::string backup_name(Date day) { return "Fogsheet " + iso_date(day) + ".fogsheets"; }

std::string saved_all(const std::vector<BackupRow>& rows, std::size_t photographs, bool were_read) {
  const auto of = [&](StorePart part) { return static_cast<std::size_t>(std::count_if(rows.begin(), rows.end(), [&](const BackupRow& row) { return row.record.part == part; })); };
  const std::string all = and_list(some(of(StorePart::sheets), "sheet", "sheets"), some(of(StorePart::desk), "boat", "boats"));
  if (all.empty()) return "There is nothing of yours yet: the file is empty.";
  const std::string with = photographs == 0 ? "." : ", and " + counted_photographs(photographs) + ".";
  return "In the file: " + all + ", each with its steps" + with + (were_read ? "" : " Photographs of charts could not be read here, and are not in it.");
}

std::string damaged_name(Date day) { return "Fogsheet damaged " + iso_date(day) + ".fogsheets"; }

std::string damaged_before(std::size_t records) { return counted(records, "record", "records") + " that can't be read lie here, for whoever can."; }

std::string damaged_gone() { return "What was damaged is no longer here."; }

std::string backup_holds(const Backup& backup) {
  const auto out = static_cast<std::size_t>(std::count_if(backup.sheets.begin(), backup.sheets.end(), [](const SheetRecord& sheet) { return sheet.state.removed_ms != 0; }));
  const std::string sheets = some(backup.sheets.size(), "sheet", "sheets") + (out == 0 ? "" : ", " + std::to_string(out) + " of them taken out,");
  const std::string all = and_list(sheets, some(backup.boats.size(), "boat", "boats"));
  return all.empty() ? "No sheet and no boat that can be read." : all.ends_with(",") ? all.substr(0, all.size() - 1) : all;
}

std::string backup_made(const std::string& day) { return day.empty() ? "When it was saved can't be read any more." : "Saved " + day + ", each with its steps."; }

std::string would_come(const Fates& fates) {
  const std::size_t come = fates.count(Fate::comes), beside = fates.count(Fate::comes_beside), here = fates.count(Fate::is_here);
  std::string text;
  if (come > 0) text = counted(come, "comes", "come") + " in.";
  if (beside > 0) text += (text.empty() ? "" : " ") + counted(beside, "is", "are") + " here in another state: nothing here is changed, the file's " + (beside == 1 ? "comes" : "come") + " beside.";
  if (here > 0) text += (text.empty() ? "" : " ") + counted(here, "stands", "stand") + " here already, the same.";
  return text;
}

std::string take_in(std::size_t count) { return count == 1 ? "Take it in" : "Take them in"; }

std::string taken_in(const Fates& fates) {
  const std::size_t came = fates.count(Fate::comes) + fates.count(Fate::comes_beside);
  return counted(came, "has", "have") + " come in from the file.";
}

std::string fate(Fate fate) {
  switch (fate) {
    case Fate::comes: return "comes in";
    case Fate::comes_beside: return "comes beside yours";
    case Fate::is_here: return "here already";
  }
  return "";
}

std::string photographs_come(std::size_t count) { return counted(count, "photograph of a chart comes with its sheet", "photographs of charts come with their sheets") + ", where none lies yet."; }

std::string photographs_cut_off(std::size_t cut_off) { return "The file was cut short: " + counted(cut_off, "photograph of a chart is", "photographs of charts are") + " not whole in it."; }

std::string photographs_came(const PhotographsUnderWay& under_way) {
  std::string text;
  const auto say = [&](PhotographTaken how, const std::string& one, const std::string& many) {
    const std::size_t count = under_way.count(how);
    if (count > 0) text += (text.empty() ? "" : " ") + counted(count, ("photograph of a chart " + one).c_str(), ("photographs of charts " + many).c_str());
  };
  say(PhotographTaken::kept, "has come with its sheet.", "have come with their sheets.");
  say(PhotographTaken::damaged, "is damaged in the file, and has not come.", "are damaged in the file, and have not come.");
  say(PhotographTaken::full, "has not come: there is too little room on this device.", "have not come: there is too little room on this device.");
  say(PhotographTaken::not_kept, "has not come: this browser does not let it be kept.", "have not come: this browser does not let them be kept.");
  return text;
}

std::string amiss(Backup::Amiss::Kind kind) {
  switch (kind) {
    case Backup::Amiss::Kind::past_lost: return "damaged: it comes as it was, without its steps";
    case Backup::Amiss::Kind::unreadable: return "damaged: it can't be read";
    case Backup::Amiss::Kind::newer: return "of a newer version: load the page anew, then open the file again";
  }
  return "";
}

std::string amiss_caption(std::size_t count) { return counted(count, "thing is", "things are") + " not whole, or can't be read"; }

std::string nameless() { return "without a name"; }

std::string pieces_set_aside(std::size_t count) { return counted(count, "record", "records") + " that had been damaged before lie in the file too, and stay there."; }

std::string pieces_missing(std::size_t count) { return "The file is not whole: of " + counted(count, "record", "records") + " in it nothing is found any more."; }

}  // namespace fogsheet::words
