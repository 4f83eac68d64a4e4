#include "shell/words_of_sending.h"

#include "shell/words.h"
#include "shell/words_of_passage.h"

namespace fogsheet::words {
namespace {

std::string counted(std::size_t count, const char* one, const char* many) { return count == 1 ? std::string("1 ") + one : grouped(static_cast<int>(count)) + " " + many; }

std::string marks_and_legs(const Document& document) {
  if (document.marks.empty()) return "No marks yet";
  return counted(document.marks.size(), "mark", "marks") + (document.legs.empty() ? "" : ", " + counted(document.legs.size(), "leg", "legs"));
}

std::string passages(const Document& document) {
  const std::vector<Passage>& all = document.passages->all;
  std::string text = all.size() == 1 ? "passage" : counted(all.size(), "passage", "passages");
  if (all.size() == 1 && !all[0].name.empty()) text += " " + quoted(all[0].name);
  return text;
}

std::string card(const KeptCard& card) {
  return card.source == CardSource::nought ? "Without deviation, for " + quoted(card.boat) : "The card of " + quoted(card.boat) + ", " + quoted(card.compass) + ", " + day_in_words(card.date);
}

bool has_passages(const Document& document) { return document.passages && !document.passages->all.empty(); }

}  // namespace

std::vector<std::string> holds(const Document& document) {
  std::vector<std::string> lines = {marks_and_legs(document)};
  if (!document.text_notes.empty()) lines.push_back(counted(document.text_notes.size(), "note", "notes"));
  if (has_passages(document)) lines.push_back("With " + passages(document));
  lines.push_back(document.compass ? card(*document.compass) : "No boat's card");
  return lines;
}

std::string holds_in_short(const Document& document) {
  return marks_and_legs(document) + (has_passages(document) ? "; " + passages(document) : "") + (document.compass ? "; with a boat's card" : "");
}

std::string where_it_goes() { return "All of it stands in the link itself, after its #: no server gets to see it. Photographs and your own position stay here."; }
std::string characters(std::size_t count) { return grouped(static_cast<int>(count)) + " characters"; }
std::string link_too_long_advice(std::size_t most) {
  return "Mail and messengers cut addresses, or break them into lines; up to " + grouped(static_cast<int>(most)) + " characters mostly get through. Send the file instead: it is the same sheet, whole.";
}
std::string not_taken_to_share() { return "Nothing took it. Copy the link, or save it as a file and send that."; }
std::string code_too_long(std::size_t most) { return "The link is too long for a code that a camera reads from a screen: " + grouped(static_cast<int>(most)) + " characters at most. Send the file instead."; }

std::string how_to_read_code() { return "Hold the other device's camera before it: it opens the sheet there."; }
std::string code_glares() { return "A code must be dark on light to be read, so at night it glares: take its light away as far as the camera still reads it."; }
std::string code_is_old() { return "The sheet has changed since."; }
std::string code_says(std::size_t count) { return "The link as a QR code, " + characters(count); }

std::string copied(bool is_link) { return std::string(is_link ? "The link" : "The place, as a geo: link,") + " is copied: paste it into a message to yourself or to your crew."; }
std::string not_copied(bool is_link) {
  return is_link ? "The link could not be copied. It stands there: select it and copy it by hand." : "The place could not be copied: select what stands in its field, and copy that by hand.";
}

std::string link_arrived() { return "A link brought this sheet. Opened, it lies beside yours, which stays in the drawer as it is."; }
std::string link_opened(const Document& document) { return "Opened " + quoted(sheet_title(document)) + ": " + holds_in_short(document) + "."; }
std::string here_already(const Document& document) { return quoted(sheet_title(document)) + " is here already, as the link has it."; }

}  // namespace fogsheet::words
