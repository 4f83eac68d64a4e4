// What the application asks of the browser. Each answer comes from the object `page` that the boot script gives the module
// (page/platform.js).
#pragma once

#include <string>

#include "shell/platform.h"

namespace fogsheet {

class PagePlatform : public Platform {
 public:
  Date today() override;
  std::int64_t now_ms() override;
  int minutes_east(std::int64_t at_ms) override;
  std::string page_address() override;
  void read_aloud(const std::string& text) override;
  void copy(const std::string& text) override;
  std::string setting(const std::string& name) override;
  void put_setting(const std::string& name, const std::string& value) override;
  void keep_awake(bool wanted) override;
  void follow_position(bool wanted) override;
  void use_new_version() override;
  TextImage text_image(const std::string& text, Face face, double px_per_em, double most_px) override;
  void write_store(const StoreWrite& write) override;
  void ask_store(const StoreAsk& ask) override;
  std::uint64_t key_lane() override;
  void look_at_room(bool ask) override;
  void wake_after(std::int64_t ms) override;
  void save_file(const std::string& name, const std::string& bytes) override;
  void save_picture(const std::string& name, const std::string& svg, int dots_an_inch) override;
  void save_for_others(const std::string& name, const std::string& format, const std::vector<std::uint8_t>& marks_and_lines) override;
  void share(const std::string& title, const std::string& text, const std::string& file_name) override;
  void make_code(const std::string& link) override;
  void open_file() override;
  void stop_file() override;
  void list_photographs() override;
  void save_with_photographs(const std::string& name, const std::string& bytes) override;
  void take_photograph(const PhotographInFile& photograph) override;
  void photograph(PhotographAct act, std::uint64_t sheet, const std::vector<std::uint8_t>& placing) override;
  void print_page() override;
};

/// Tells the page that one of our own checks failed and leaves by a script error, through whatever was running. The page
/// calls nothing that draws or changes from then on.
[[noreturn]] void stop_canvas(const char* condition, const char* message, const char* file, int line);

}  // namespace fogsheet
