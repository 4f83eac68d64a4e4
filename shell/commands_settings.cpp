#include "shell/commands_settings.h"

#include "shell/arguments.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

/// A setting that is one of a few words: the word is checked, put on the session and kept on the device.
/// @param put  false when the word has no meaning
template <class Put>
Value put_setting(Session& session, const Value& arguments, const char* argument, const char* setting, const char* what, Put put) {
  const Result<std::string> word = text_argument(arguments, argument);
  if (!word) return refused(word.problem());
  if (!put(*word)) return refused({.fault = Fault::entry_unreadable, .texts = {what, *word}});
  session.platform.put_setting(setting, *word);
  return done();
}

/// Whether `word` is one of two, and then puts whether it is the second.
bool put_either(const std::string& word, std::string_view first, std::string_view second, bool& is_second) {
  if (word != first && word != second) return false;
  is_second = word == second;
  return true;
}

Value run_set_palette(Session& session, const Value& arguments) {
  return put_setting(session, arguments, "palette", "palette", "palette", [&](const std::string& word) {
    const std::optional<Palette> palette = palette_named(word);
    if (palette) session.settings.palette = *palette;
    return palette.has_value();
  });
}

Value run_set_dimmer(Session& session, const Value& arguments) {
  return put_setting(session, arguments, "step", "dimmer", "step of the dimmer", [&](const std::string& word) {
    if (word.size() != 1 || word[0] < '0' || word[0] > '0' + k_dimmest) return false;
    session.settings.dimmer = word[0] - '0';
    return true;
  });
}

Value run_set_rounding(Session& session, const Value& arguments) {
  return put_setting(session, arguments, "rounding", "rounding", "rounding", [&](const std::string& word) {
    bool tenths = false;
    if (!put_either(word, "whole", "tenths", tenths)) return false;
    session.settings.rounding = tenths ? Rounding::tenths : Rounding::whole_degrees;
    return true;
  });
}

Value run_set_text_size(Session& session, const Value& arguments) {
  return put_setting(session, arguments, "percent", "text-size", "size of text", [&](const std::string& word) {
    for (const int percent : k_text_sizes)
      if (std::to_string(percent) == word) {
        session.settings.text_percent = percent;
        return true;
      }
    return false;
  });
}

Value run_set_lines(Session& session, const Value& arguments) {
  return put_setting(session, arguments, "lines", "lines", "lines", [&](const std::string& word) { return put_either(word, "usual", "bold", session.settings.bold_lines); });
}

Value run_set_single_keys(Session& session, const Value& arguments) {
  return put_setting(session, arguments, "keys", "single-keys", "keys", [&](const std::string& word) { return put_either(word, "off", "on", session.settings.single_keys); });
}

Value run_set_screen(Session& session, const Value& arguments) {
  return put_setting(session, arguments, "screen", "screen", "screen", [&](const std::string& word) { return put_either(word, "device", "awake", session.settings.keep_awake); });
}

Value run_set_loupe(Session& session, const Value& arguments) {
  return put_setting(session, arguments, "state", "loupe", "loupe", [&](const std::string& word) { return put_either(word, "off", "on", session.settings.loupe); });
}

Value run_set_snap(Session& session, const Value& arguments) {
  return put_setting(session, arguments, "state", "snap", "snap", [&](const std::string& word) { return put_either(word, "off", "on", session.settings.snap); });
}

/// The page loads anew once all that was done is kept (App).
Value run_use_new_version(Session& session, const Value&) {
  if (!session.nothing_to_lose()) return Value::object({{"error", words::not_while_unkept()}});
  session.new_version_wanted = true;
  return done();
}

}  // namespace

std::vector<Command> settings_commands() {
  return {
      {"set-palette", "Set the palette", "", {{"palette", "day, dusk, night or high-contrast"}}, nullptr, run_set_palette},
      {"set-dimmer", "Set the dimmer, which works in dusk and night", "", {{"step", "\"0\" (all is shown) to \"3\""}}, nullptr, run_set_dimmer},
      {"set-rounding", "Show directions in whole degrees or tenths", "", {{"rounding", "whole or tenths"}}, nullptr, run_set_rounding},
      {"set-text-size", "Set the size of text beside the sheet", "", {{"percent", "\"100\", \"125\" or \"150\""}}, nullptr, run_set_text_size},
      {"set-lines", "Set the weight of lines", "", {{"lines", "usual or bold"}}, nullptr, run_set_lines},
      {"set-single-keys", "Use keys that are pressed alone", "", {{"keys", "on or off"}}, nullptr, run_set_single_keys},
      {"set-screen", "Keep the screen awake, or leave that to the device", "", {{"screen", "device or awake"}}, nullptr, run_set_screen},
      {"set-loupe", "Show a loupe while a finger aims", "", {{"state", "on or off"}}, nullptr, run_set_loupe},
      {"set-snap", "Snap points of instruments to marks", "", {{"state", "on or off"}}, nullptr, run_set_snap},
      {"use-new-version", "Use the newer version", "", {}, nullptr, run_use_new_version},
  };
}

}  // namespace fogsheet
