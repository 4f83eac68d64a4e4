#include "web/page_platform.h"

#include <emscripten.h>

#include <cstdlib>
#include <memory>

#include "shell/kept_key.h"

// clang-format off
EM_JS(int, page_today, (), { return Module["page"].today(); });

EM_JS(double, page_now_ms, (), { return Module["page"].now_ms(); });

EM_JS(int, page_minutes_east, (double at_ms), { return Module["page"].minutes_east(at_ms); });

EM_JS(void, page_store_act, (int kind, int part, double sheet, double sequence, double last, const void* bytes, int size), {
  Module["page"].store_act(kind, part, sheet, sequence, last, HEAPU8.slice(bytes, bytes + size));
});

EM_JS(void, page_store_write, (double id), { Module["page"].store_write(id); });

EM_JS(void, page_store_ask, (int kind, int part, double key), { Module["page"].store_ask(kind, part, key); });

EM_JS(int, page_key_lane, (), { return Module["page"].key_lane; });
EM_JS(void, page_look_at_room, (int ask), { Module["page"].look_at_room(ask !== 0); });

EM_JS(void, page_wake_after, (double ms), { Module["page"].wake_after(ms); });

EM_JS(void, page_save_file, (const char* name, const char* bytes, int size), { Module["page"].save_file(UTF8ToString(name), HEAPU8.slice(bytes, bytes + size)); });

EM_JS(void, page_save_picture, (const char* name, const char* svg, int dots_an_inch), { Module["page"].save_picture(UTF8ToString(name), UTF8ToString(svg), dots_an_inch); });
EM_JS(void, page_save_for_others, (const char* name, const char* format, const void* bytes, int size), {
  Module["page"].save_for_others(UTF8ToString(name), UTF8ToString(format), HEAPU8.slice(bytes, bytes + size));
});

EM_JS(void, page_share, (const char* title, const char* text, const char* file_name), {
  Module["page"].share(UTF8ToString(title), UTF8ToString(text), UTF8ToString(file_name));
});

EM_JS(void, page_make_code, (const char* link), { Module["page"].make_code(UTF8ToString(link)); });

EM_JS(void, page_open_file, (), { Module["page"].open_file(); });
EM_JS(void, page_stop_file, (), { Module["page"].stop_file(); });

EM_JS(void, page_list_photographs, (), { Module["page"].list_photographs(); });
EM_JS(void, page_save_with_photographs, (const char* name, const char* bytes, int size), { Module["page"].save_with_photographs(UTF8ToString(name), HEAPU8.slice(bytes, bytes + size)); });
EM_JS(void, page_take_photograph, (double sheet, const char* name, const void* placing, int size, double at, double bytes, double checksum), {
  Module["page"].take_photograph(sheet, UTF8ToString(name), HEAPU8.slice(placing, placing + size), at, bytes, checksum);
});
EM_JS(void, page_photograph, (int act, double sheet, const void* placing, int size), { Module["page"].photograph(act, sheet, HEAPU8.slice(placing, placing + size)); });

EM_JS(void, page_print, (), { Module["page"].print_page(); });

EM_JS(char*, page_text, (const char* what, const char* name), {
  const text = Module["page"][UTF8ToString(what)](UTF8ToString(name));
  const size = lengthBytesUTF8(text) + 1;
  const bytes = _malloc(size);
  stringToUTF8(text, bytes, size);
  return bytes;
});

EM_JS(std::uint8_t*, page_text_image, (const char* text, int face, double px_per_em, double most_px, double* measures), {
  const image = Module["page"].text_image(UTF8ToString(text), face, px_per_em, most_px);
  HEAPF64.set([image.width, image.height, image.pen_x, image.baseline, image.advance_px], measures / 8);
  const coverage = _malloc(image.coverage.length);
  HEAPU8.set(image.coverage, coverage);
  return coverage;
});

EM_JS(void, page_copy, (const char* text), { Module["page"].copy(UTF8ToString(text)); });

EM_JS(void, page_read_aloud, (const char* text), { Module["page"].read_aloud(UTF8ToString(text)); });

EM_JS(void, page_put_setting, (const char* name, const char* value), { Module["page"].put_setting(UTF8ToString(name), UTF8ToString(value)); });

EM_JS(void, page_keep_awake, (int wanted), { Module["page"].keep_awake(wanted !== 0); });

EM_JS(void, page_follow_position, (int wanted), { Module["page"].follow_position(wanted !== 0); });

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
void PagePlatform::read_aloud(const std::string& text) { page_read_aloud(text.c_str()); }
std::string PagePlatform::setting(const std::string& name) { return answer("setting", name.c_str()); }
void PagePlatform::put_setting(const std::string& name, const std::string& value) { page_put_setting(name.c_str(), value.c_str()); }

void PagePlatform::keep_awake(bool wanted) { page_keep_awake(wanted); }
void PagePlatform::follow_position(bool wanted) { page_follow_position(wanted); }

TextImage PagePlatform::text_image(const std::string& text, Face face, double px_per_em, double most_px) {
  double measures[5] = {};
  const std::unique_ptr<std::uint8_t, decltype(&std::free)> coverage(page_text_image(text.c_str(), static_cast<int>(face), px_per_em, most_px, measures), &std::free);
  TextImage image{.width = static_cast<int>(measures[0]), .height = static_cast<int>(measures[1]), .pen_x = static_cast<int>(measures[2]), .baseline = static_cast<int>(measures[3]), .advance_px = measures[4]};
  image.coverage.assign(coverage.get(), coverage.get() + static_cast<std::size_t>(image.width) * static_cast<std::size_t>(image.height));
  return image;
}

void PagePlatform::use_new_version() { page_use_new_version(); }

int PagePlatform::minutes_east(std::int64_t at_ms) { return page_minutes_east(static_cast<double>(at_ms)); }

std::uint64_t PagePlatform::key_lane() { return static_cast<std::uint64_t>(page_key_lane()) % k_key_lanes; }

void PagePlatform::ask_store(const StoreAsk& ask) { page_store_ask(static_cast<int>(ask.kind), static_cast<int>(ask.document.part), static_cast<double>(ask.document.key)); }

void PagePlatform::write_store(const StoreWrite& write) {
  for (const StoreAct& act : write.acts)
    page_store_act(static_cast<int>(act.kind), static_cast<int>(act.part), static_cast<double>(act.sheet), static_cast<double>(act.sequence), static_cast<double>(act.last), act.bytes.data(),
                   static_cast<int>(act.bytes.size()));
  page_store_write(static_cast<double>(write.id));
}

void PagePlatform::look_at_room(bool ask) { page_look_at_room(ask); }
void PagePlatform::wake_after(std::int64_t ms) { page_wake_after(static_cast<double>(ms)); }
void PagePlatform::save_file(const std::string& name, const std::string& bytes) { page_save_file(name.c_str(), bytes.data(), static_cast<int>(bytes.size())); }
void PagePlatform::save_picture(const std::string& name, const std::string& svg, int dots_an_inch) { page_save_picture(name.c_str(), svg.c_str(), dots_an_inch); }
void PagePlatform::save_for_others(const std::string& name, const std::string& format, const std::vector<std::uint8_t>& marks_and_lines) {
  page_save_for_others(name.c_str(), format.c_str(), marks_and_lines.data(), static_cast<int>(marks_and_lines.size()));
}
void PagePlatform::share(const std::string& title, const std::string& text, const std::string& file_name) { page_share(title.c_str(), text.c_str(), file_name.c_str()); }
void PagePlatform::make_code(const std::string& link) { page_make_code(link.c_str()); }
void PagePlatform::open_file() { page_open_file(); }
void PagePlatform::stop_file() { page_stop_file(); }
void PagePlatform::list_photographs() { page_list_photographs(); }
void PagePlatform::save_with_photographs(const std::string& name, const std::string& bytes) { page_save_with_photographs(name.c_str(), bytes.data(), static_cast<int>(bytes.size())); }
void PagePlatform::take_photograph(const PhotographInFile& photograph) {
  page_take_photograph(static_cast<double>(photograph.sheet.value), photograph.name.c_str(), photograph.placing.data(), static_cast<int>(photograph.placing.size()), static_cast<double>(photograph.at), static_cast<double>(photograph.bytes), photograph.checksum);
}
void PagePlatform::photograph(PhotographAct act, std::uint64_t sheet, const std::vector<std::uint8_t>& placing) { page_photograph(static_cast<int>(act), static_cast<double>(sheet), placing.data(), static_cast<int>(placing.size())); }
void PagePlatform::print_page() { page_print(); }

void stop_canvas(const char*, const char* message, const char* file, int line) {
  page_stop(message, file, line);
  std::abort();  // not reached
}

}  // namespace fogsheet
