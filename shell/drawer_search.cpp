#include "shell/drawer_search.h"

#include "core/base/search_text.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

bool finds(Search& search, const Document& document) {
  search.begin_anew();
  search.look_in(words::sheet_title(document));
  search.look_in(document.sheet.note);
  search.look_in(iso_date(document.sheet.date));
  search.look_in(document.sheet.datum);
  if (document.compass) search.look_in(document.compass->boat);
  if (document.passages)
    for (const Passage& passage : document.passages->all) search.look_in(passage.name);
  for (const TextNote& note : document.text_notes) search.look_in(note.text);
  for (const Mark& mark : document.marks) {
    if (search.all_found()) break;
    search.look_in(mark.name);
    search.look_in(mark.note);
  }
  return search.all_found();
}

}  // namespace

std::vector<const SheetInDrawer*> found_among(const std::vector<const SheetInDrawer*>& sheets, const std::string& typed) {
  Search search(typed);
  if (search.is_empty()) return sheets;
  std::vector<const SheetInDrawer*> found;
  for (const SheetInDrawer* sheet : sheets)
    if (finds(search, sheet->history.now())) found.push_back(sheet);
  return found;
}

}  // namespace fogsheet
