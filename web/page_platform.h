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
  std::string page_address() override;
  void copy(const std::string& text) override;
  std::string setting(const std::string& name) override;
  void put_setting(const std::string& name, const std::string& value) override;
  void use_new_version() override;
};

/// Tells the page that one of our own checks failed and leaves by a script error, through whatever was running. The page
/// calls nothing that draws or changes from then on.
[[noreturn]] void stop_canvas(const char* condition, const char* message, const char* file, int line);

}  // namespace fogsheet
