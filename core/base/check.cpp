#include "core/base/check.h"

#include <cstdio>
#include <cstdlib>

namespace fogsheet {
namespace {

// The one piece of state outside a struct: a failed check has no other road to its host.
CheckHandler handler_in_force = nullptr;

}  // namespace

void set_check_handler(CheckHandler handler) { handler_in_force = handler; }

void check_failed(const char* condition, const char* message, const char* file, int line) {
  if (handler_in_force) handler_in_force(condition, message, file, line);
  std::fprintf(stderr, "%s:%d: %s (%s)\n", file, line, message, condition);
  std::abort();
}

}  // namespace fogsheet
