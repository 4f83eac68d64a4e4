// A machine that tests can look into.
#pragma once

#include <algorithm>
#include <map>
#include <vector>

#include "shell/platform.h"

namespace fogsheet {

struct FakePlatform : Platform {
  Date day{.year = 2026, .month = 11, .day = 25};
  std::int64_t time_ms = 1'795'600'000'000;  // on that day
  std::string copied_text;
  std::vector<std::string> heard;
  std::map<std::string, std::string> settings;
  bool new_version_used = false;
  bool kept_awake = false;
  bool position_followed = false;
  std::uint64_t lane = 0;
  std::vector<StoreWrite> store_writes;
  std::vector<StoreAsk> store_asks;
  std::int64_t wakes_after_ms = 0;
  int times_looked = 0;  // at the room there is
  int times_asked = 0;   // to promise
  std::map<std::string, std::string> saved_files;
  int picture_dots = -1;  // of the last picture saved
  std::map<std::string, std::pair<std::string, std::vector<std::uint8_t>>> saved_for_others;  // format and bytes
  bool file_asked_for = false;
  struct Shared {
    std::string title, text, file_name;
  };
  std::vector<Shared> shared;
  std::string code_asked_for;
  int pages_printed = 0;
  std::vector<std::string> text_images;  // asked for
  double text_advance_em = 3;

  Date today() override { return day; }
  std::int64_t now_ms() override { return time_ms; }
  std::uint64_t key_lane() override { return lane; }
  std::string page_address() override { return "https://example.org/sheet/"; }
  void copy(const std::string& text) override { copied_text = text; }
  void keep_awake(bool wanted) override { kept_awake = wanted; }
  void follow_position(bool wanted) override { position_followed = wanted; }
  /// A box as wide as asked for, or as `text_advance_em`, standing on the baseline.
  TextImage text_image(const std::string& text, Face, double px_per_em, double most_px) override {
    text_images.push_back(text);
    const double advance_px = std::min(most_px, text_advance_em * px_per_em);
    const int width = static_cast<int>(advance_px), height = static_cast<int>(px_per_em / 2);
    return {.width = width, .height = height, .baseline = height, .advance_px = advance_px, .coverage = std::vector<std::uint8_t>(static_cast<std::size_t>(width) * static_cast<std::size_t>(height), 255)};
  }
  void read_aloud(const std::string& text) override { heard.push_back(text); }
  void use_new_version() override { new_version_used = true; }
  std::string setting(const std::string& name) override { return settings[name]; }
  std::int64_t summer_ends_ms = 0;  // until then its clock is two hours ahead of UTC, and one hour from then on
  int minutes_east(std::int64_t at_ms) override { return at_ms < summer_ends_ms ? 120 : 60; }
  void write_store(const StoreWrite& write) override { store_writes.push_back(write); }
  void ask_store(const StoreAsk& ask) override { store_asks.push_back(ask); }
  void look_at_room(bool ask) override { ++(ask ? times_asked : times_looked); }
  void wake_after(std::int64_t ms) override { wakes_after_ms = ms; }
  void save_file(const std::string& name, const std::string& text) override { saved_files[name] = text; }
  void save_picture(const std::string& name, const std::string& svg, int dots_an_inch) override {
    saved_files[name] = svg;
    picture_dots = dots_an_inch;
  }
  void save_for_others(const std::string& name, const std::string& format, const std::vector<std::uint8_t>& marks_and_lines) override { saved_for_others[name] = {format, marks_and_lines}; }
  void share(const std::string& title, const std::string& text, const std::string& file_name) override { shared.push_back({title, text, file_name}); }
  void make_code(const std::string& link) override { code_asked_for = link; }
  void open_file() override { file_asked_for = true; }
  int files_stopped = 0;
  void stop_file() override { ++files_stopped; }
  std::vector<std::pair<PhotographAct, std::uint64_t>> photograph_acts;
  std::vector<std::uint8_t> photograph_placing;  // of the last to be kept
  void photograph(PhotographAct act, std::uint64_t sheet, const std::vector<std::uint8_t>& placing) override {
    photograph_acts.emplace_back(act, sheet);
    if (act == PhotographAct::keep) photograph_placing = placing;
  }
  int photographs_asked_for = 0;  // for the file of all
  void list_photographs() override { ++photographs_asked_for; }
  void save_with_photographs(const std::string& name, const std::string& bytes) override { saved_files[name] = bytes; }
  std::vector<PhotographInFile> photographs_taken;
  void take_photograph(const PhotographInFile& photograph) override { photographs_taken.push_back(photograph); }
  void print_page() override { ++pages_printed; }
  void put_setting(const std::string& name, const std::string& value) override { settings[name] = value; }
};

}  // namespace fogsheet
