#include "core/exchange/xml.h"

#include <expat.h>

#include <algorithm>
#include <memory>
#include <string>

#include "core/base/utf8.h"
#include "core/exchange/file_text.h"

namespace fogsheet {
namespace {

constexpr XML_Char k_parting = '\n';  // between a namespace and a name: no attribute's value can have one by itself
constexpr std::size_t k_deepest = 100;
constexpr unsigned long k_salt = 0x9E3779B9UL;  // the same each time: a file's size bounds what a crafted one can cost

struct Run {
  XML_Parser parser = nullptr;
  XmlEvents* events = nullptr;
  std::size_t depth = 0;
  bool stopped = false, too_deep = false, own_types = false;
  std::string type;      // the document's own
  std::string encoding;  // that we don't know
  std::vector<XmlAttribute> attributes = {};
  XML_Char parting = k_parting;
  std::size_t lines_before = 0;

  void stop() { XML_StopParser(parser, XML_FALSE); }

  XmlName name_of(const XML_Char* name) const {
    const std::string_view whole(name);
    const std::size_t at = whole.rfind(parting);
    if (at == std::string_view::npos) return {{}, whole};
    return {whole.substr(0, at), whole.substr(at + 1)};
  }
};

Run& run_of(void* data) { return *static_cast<Run*>(data); }

void on_open(void* data, const XML_Char* name, const XML_Char** attributes) {
  Run& run = run_of(data);
  if (++run.depth > k_deepest) {
    run.too_deep = true;
    return run.stop();
  }
  run.attributes.clear();
  for (; attributes[0]; attributes += 2) run.attributes.push_back({run.name_of(attributes[0]), attributes[1]});
  if (run.events->open(run.name_of(name), run.attributes, run.lines_before + XML_GetCurrentLineNumber(run.parser))) return;
  run.stopped = true;
  run.stop();
}

void on_close(void* data, const XML_Char*) {
  Run& run = run_of(data);
  --run.depth;
  run.events->close();
}

void on_text(void* data, const XML_Char* text, int size) { run_of(data).events->text({text, static_cast<std::size_t>(size)}); }

void on_document_type(void* data, const XML_Char* name, const XML_Char*, const XML_Char*, int) {
  Run& run = run_of(data);
  run.own_types = true;
  run.type = name;
  run.stop();
}

bool is_windows_1252(std::string_view name) {
  std::string small;
  for (const char c : name) small += static_cast<char>(c >= 'A' && c <= 'Z' ? c + 32 : c);
  return small == "windows-1252" || small == "cp1252" || small == "ansi";
}

int on_encoding(void* data, const XML_Char* name, XML_Encoding* encoding) {
  if (!is_windows_1252(name)) {
    run_of(data).encoding = std::string(std::string_view(name).substr(0, 40));
    return XML_STATUS_ERROR;
  }
  for (int byte = 0; byte < 256; ++byte) encoding->map[byte] = static_cast<int>(windows_1252(static_cast<unsigned char>(byte)));
  encoding->data = nullptr;
  encoding->convert = nullptr;
  encoding->release = nullptr;
  return XML_STATUS_OK;
}

// How a file is read: first as the standards have it.
struct Way {
  bool with_spaces = true;
  bool as_windows_1252 = false;
};

XML_Error parse(std::string_view bytes, Way way, Run& run, std::size_t& line) {
  const char* encoding = way.as_windows_1252 ? "windows-1252" : nullptr;
  const std::unique_ptr<XML_ParserStruct, decltype(&XML_ParserFree)> parser(way.with_spaces ? XML_ParserCreateNS(encoding, k_parting) : XML_ParserCreate(encoding), &XML_ParserFree);
  run.parser = parser.get();
  run.parting = way.with_spaces ? k_parting : ':';
  XML_SetHashSalt(run.parser, k_salt);
  XML_SetUserData(run.parser, &run);
  XML_SetElementHandler(run.parser, on_open, on_close);
  XML_SetCharacterDataHandler(run.parser, on_text);
  XML_SetStartDoctypeDeclHandler(run.parser, on_document_type);
  XML_SetUnknownEncodingHandler(run.parser, on_encoding, &run);
  run.events->begin();
  const XML_Status status = XML_Parse(run.parser, bytes.data(), static_cast<int>(bytes.size()), XML_TRUE);
  line = XML_GetCurrentLineNumber(run.parser);
  return status == XML_STATUS_OK ? XML_ERROR_NONE : XML_GetErrorCode(run.parser);
}

// Blank lines before the declaration and filling after the end are common, and no part of a document. UTF-16 is left alone.
std::string_view without_filling(std::string_view bytes, std::size_t& lines_before) {
  const std::size_t first = bytes.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos || bytes[first] != '<') return bytes;
  lines_before = static_cast<std::size_t>(std::count(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(first), '\n'));
  bytes.remove_prefix(first);
  if (bytes.size() > 1 && bytes[1] == '\0') return bytes;
  while (!bytes.empty() && (bytes.back() == '\0' || bytes.back() == '\x1A')) bytes.remove_suffix(1);
  return bytes;
}

}  // namespace

Result<XmlOddities> read_xml(std::string_view bytes, XmlEvents& events) {
  std::size_t lines_before = 0;
  bytes = without_filling(bytes, lines_before);
  Way way;
  for (;;) {
    Run run{.events = &events, .lines_before = lines_before};
    std::size_t line = 0;
    const XML_Error error = parse(bytes, way, run, line);
    line += lines_before;
    if (error == XML_ERROR_NONE || run.stopped) return XmlOddities{.prefix_undeclared = !way.with_spaces, .encoding_untold = way.as_windows_1252};
    if (run.own_types) return Problem{.fault = Fault::file_own_types, .texts = {std::string(fitting(run.type, 100))}};
    if (run.too_deep) return Problem{.fault = Fault::file_too_deep, .texts = {"XML"}, .numbers = {static_cast<double>(line)}};
    if (error == XML_ERROR_UNBOUND_PREFIX && way.with_spaces) way.with_spaces = false;
    else if (error == XML_ERROR_INVALID_TOKEN && !way.as_windows_1252 && !is_utf8(bytes) && bytes.find('\0') == std::string_view::npos) way.as_windows_1252 = true;
    else if (error == XML_ERROR_UNKNOWN_ENCODING) return Problem{.fault = Fault::file_encoding, .texts = {run.encoding}};
    else return Problem{.fault = Fault::file_broken, .texts = {"XML"}, .numbers = {static_cast<double>(line)}};
  }
}

}  // namespace fogsheet
