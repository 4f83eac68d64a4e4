#include "web/page_platform.h"

#include <emscripten.h>

#include <cstdlib>
#include <memory>

// clang-format off
EM_JS(int, page_today, (), { return Module["page"].today(); });

EM_JS(double, page_now_ms, (), { return Module["page"].now_ms(); });

EM_JS(char*, page_text, (const char* what, const char* name), {
  const text = Module["page"][UTF8ToString(what)](UTF8ToString(name));
  const size = lengthBytesUTF8(text) + 1;
  const bytes = _malloc(size);
  stringToUTF8(text, bytes, size);
  return bytes;
});

EM_JS(void, page_copy, (const char* text), { Module["page"].copy(UTF8ToString(text)); });

EM_JS(void, page_put_setting, (const char* name, const char* value), { Module["page"].put_setting(UTF8ToString(name), UTF8ToString(value)); });

EM_JS(void, page_use_new_version, (), { Module["page"].use_new_version(); });

EM_JS(void, page_stop, (const char* message, const char* file, int line), {
  throw new Error(UTF8ToString(message) + " (" + UTF8ToString(file) + ":" + line + ")");
});
// clang-format on

namespace fogsheet {
namespace {

std::string answer(const char* what, const char* name = "") {
  const std::unique_ptr<char, decltype(&std::free)> text(page_text(what, name), &std::free);
  return text.get();
}

}  // namespace

Date PagePlatform::today() {
  const int day = page_today();  // yyyymmdd
  return {.year = day / 10000, .month = day / 100 % 100, .day = day % 100};
}

std::int64_t PagePlatform::now_ms() { return static_cast<std::int64_t>(page_now_ms()); }

std::string PagePlatform::page_address() { return answer("address"); }
void PagePlatform::copy(const std::string& text) { page_copy(text.c_str()); }
std::string PagePlatform::setting(const std::string& name) { return answer("setting", name.c_str()); }
void PagePlatform::put_setting(const std::string& name, const std::string& value) { page_put_setting(name.c_str(), value.c_str()); }

void PagePlatform::use_new_version() { page_use_new_version(); }

void stop_canvas(const char*, const char* message, const char* file, int line) {
  page_stop(message, file, line);
  std::abort();  // not reached
}

}  // namespace fogsheet
