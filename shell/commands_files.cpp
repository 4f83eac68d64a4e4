#include "shell/commands_files.h"

#include "core/formats/document_text.h"
#include "shell/arguments.h"
#include "shell/commands_drawer.h"
#include "shell/commands_sheet.h"
#include "shell/words.h"
#include "shell/words_of_files.h"

namespace fogsheet {
namespace {

std::optional<Fault> no_file(const Session& session) { return session.file && session.file->read && session.file->read->ok() ? std::nullopt : std::optional(Fault::no_file_in_hand); }

std::optional<Fault> none_chosen(const Session& session) { return session.file ? std::nullopt : std::optional(Fault::no_file_in_hand); }

Value run_import_marks(Session& session, const Value&) {
  const FileInHand& file = *session.file;
  const Result<Import> import = acted(session, [&] { return import_marks(session.history(), **file.read, words::import_names(), file.name); });
  if (!import) return refused(import.problem());
  session.say(words::imported(*import));
  put_file_away(session);
  return done();
}

Value run_import_as_sheet(Session& session, const Value&) {
  const FileInHand& file = *session.file;
  const MarksAndLines& all = **file.read;
  Result<Document> made = sheet_of_import(all, words::import_names(), all.title.empty() ? words::without_extension(file.name) : all.title, session.document().sheet.paper, session.platform.today());
  if (!made) return refused(made.problem());
  lay_down(session, std::move(made).value(), Act::open_sheet);
  put_file_away(session);
  return done();
}

Value run_put_file_away(Session& session, const Value&) {
  put_file_away(session);
  return done();
}

Value run_show_file(Session& session, const Value&) {
  session.slip = SlipId::file;
  return done();
}

Value run_open_file(Session& session, const Value&) {
  session.platform.open_file();
  return done();
}

/// What a newer program has put on a sheet is saved with it, as long as it lies as that one left it.
std::string text_of(const SheetInDrawer& sheet) {
  const Result<Document> newer = decode_document(sheet.newer_text);
  return newer && *newer == sheet.history.now() ? sheet.newer_text : encode_document(sheet.history.now());
}

Value run_save_as(Session& session, const Value& arguments) {
  const Result<std::string> format = text_argument(arguments, "format");
  if (!format) return refused(format.problem());
  const Result<SheetKey> key = sheet_argument(session, arguments);
  if (!key) return refused(key.problem());
  const SheetInDrawer& sheet = *session.sheets.find(*key);
  const Document& document = sheet.history.now();
  if (*format == "fogsheet") session.platform.save_file(words::file_name(document, *format), text_of(sheet) + "\n");
  else if (words::format_label(*format).empty()) return refused({.fault = Fault::entry_unreadable, .texts = {"format", *format}});
  else session.platform.save_for_others(words::file_name(document, *format), *format, to_bytes(marks_and_lines_of(document)));
  return done();
}

}  // namespace

void put_file_away(Session& session) {
  if (session.file && session.file->is_being_read()) session.platform.stop_file();
  session.file.reset();
  if (session.slip == SlipId::file) session.slip = SlipId::none;
}

std::optional<Problem> no_sheet_of_file(const Session& session) {
  const Result<FittedSheet> fitted = sheet_around_import(**session.file->read, session.document().sheet.paper);
  return fitted ? std::nullopt : std::optional(fitted.problem());
}

Import import_of_file(const Session& session) {
  Document document = session.document();
  return import_into(document, **session.file->read, words::import_names());
}

std::vector<Command> file_commands() {
  return {
      {"open-file", "Open a file", "", {}, nullptr, run_open_file},
      {"import-marks", "Put what the file holds on this sheet", "", {}, no_file, run_import_marks},
      {"import-as-sheet", "A new sheet of what the file holds", "", {}, no_file, run_import_as_sheet},
      {"show-file", "What the chosen file holds", "", {}, none_chosen, run_show_file},
      {"put-file-away", "Put the file away", "", {}, nullptr, run_put_file_away},
      {"save-as", "Save as a file for other programs", "", {{"format", "fogsheet, gpx, geojson or csv"}, {"key", "key of a sheet; the one in hand", true}}, nullptr, run_save_as},
  };
}

}  // namespace fogsheet
