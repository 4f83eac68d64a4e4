// A machine that tests can look into.
#pragma once

#include <map>

#include "shell/platform.h"

namespace fogsheet {

struct FakePlatform : Platform {
  Date day{.year = 2026, .month = 11, .day = 25};
  std::int64_t time_ms = 1'795'600'000'000;  // on that day
  std::string copied_text;
  std::map<std::string, std::string> settings;
  bool new_version_used = false;

  Date today() override { return day; }
  std::int64_t now_ms() override { return time_ms; }
  std::string page_address() override { return "https://example.org/sheet/"; }
  void copy(const std::string& text) override { copied_text = text; }
  void use_new_version() override { new_version_used = true; }
  std::string setting(const std::string& name) override { return settings[name]; }
  void put_setting(const std::string& name, const std::string& value) override { settings[name] = value; }
};

}  // namespace fogsheet
