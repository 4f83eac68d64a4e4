// Stops the program on our own mistakes, in release builds too: stopping beats drawing a wrong line.
// The user's mistakes never come here; they are a Result (result.h). The host says what stopping means: the web build
// keeps the page and its last course readable.
#pragma once

namespace fogsheet {

/// Called with the failed condition, the message and the place. Must not return. The default prints and aborts.
using CheckHandler = void (*)(const char* condition, const char* message, const char* file, int line);

/// Replaces the handler; null puts the default back.
void set_check_handler(CheckHandler handler);

[[noreturn]] void check_failed(const char* condition, const char* message, const char* file, int line);

}  // namespace fogsheet

#define SHEET_CHECK(condition, message) \
  (static_cast<bool>(condition) ? static_cast<void>(0) : ::fogsheet::check_failed(#condition, message, __FILE__, __LINE__))
