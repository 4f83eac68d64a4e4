// What the application asks of the machine it runs on. web implements it, tests fake it.
#pragma once

#include <cstdint>
#include <string>

#include "core/base/date.h"

namespace fogsheet {

class Platform {
 public:
  virtual ~Platform() = default;
  virtual Date today() = 0;
  /// Milliseconds since 1970, UTC; may be set back by the user.
  virtual std::int64_t now_ms() = 0;
  /// The page's own address up to and without the '#'.
  virtual std::string page_address() = 0;
  /// Puts text on the clipboard; only inside a press. The page says afterwards how it went (App::copied).
  virtual void copy(const std::string& text) = 0;
  /// The newer version of the program that waits is put in use; the page loads anew.
  virtual void use_new_version() = 0;
  /// Settings that outlive the page on this device; empty when never put or not allowed.
  virtual std::string setting(const std::string& name) = 0;
  virtual void put_setting(const std::string& name, const std::string& value) = 0;
};

}  // namespace fogsheet
