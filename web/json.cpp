#include "web/json.h"

#include <cmath>

#include "rapidjson/document.h"
#include "rapidjson/stringbuffer.h"
#include "rapidjson/writer.h"

namespace fogsheet {
namespace {

using Writer = rapidjson::Writer<rapidjson::StringBuffer>;

constexpr int k_deepest = 32;

void write_text(Writer& writer, const std::string& text) { writer.String(text.data(), static_cast<rapidjson::SizeType>(text.size())); }

void write(Writer& writer, const Value& value) {
  if (const bool* flag = value.flag()) {
    writer.Bool(*flag);
  } else if (const double* number = value.number()) {
    if (std::isfinite(*number)) writer.Double(*number);
    else writer.Null();
  } else if (const std::string* text = value.text()) {
    write_text(writer, *text);
  } else if (const Value::List* items = value.items()) {
    writer.StartArray();
    for (const Value& item : *items) write(writer, item);
    writer.EndArray();
  } else if (const Value::Members* members = value.members()) {
    writer.StartObject();
    for (const auto& [name, member] : *members) {
      write_text(writer, name);
      write(writer, member);
    }
    writer.EndObject();
  } else {
    writer.Null();
  }
}

std::string text_of(const rapidjson::Value& parsed) { return {parsed.GetString(), parsed.GetStringLength()}; }

std::optional<Value> value_of(const rapidjson::Value& parsed, int depth) {
  if (depth > k_deepest) return std::nullopt;
  if (parsed.IsBool()) return Value(parsed.GetBool());
  if (parsed.IsNumber()) return Value(parsed.GetDouble());
  if (parsed.IsString()) return Value(text_of(parsed));
  if (parsed.IsArray()) {
    Value list = Value::list();
    for (const rapidjson::Value& item : parsed.GetArray()) {
      std::optional<Value> value = value_of(item, depth + 1);
      if (!value) return std::nullopt;
      list.add(std::move(*value));
    }
    return list;
  }
  if (parsed.IsObject()) {
    Value object = Value::object();
    for (const auto& member : parsed.GetObject()) {
      std::optional<Value> value = value_of(member.value, depth + 1);
      if (!value) return std::nullopt;
      object.set(text_of(member.name), std::move(*value));
    }
    return object;
  }
  return Value();
}

}  // namespace

std::string to_json(const Value& value) {
  rapidjson::StringBuffer buffer;
  Writer writer(buffer);
  write(writer, value);
  return {buffer.GetString(), buffer.GetSize()};
}

std::optional<Value> parse_json(std::string_view text) {
  // Iterative, so that no nesting can use up the stack; full precision, so that a number written out reads back as it was.
  constexpr unsigned flags = rapidjson::kParseIterativeFlag | rapidjson::kParseFullPrecisionFlag | rapidjson::kParseValidateEncodingFlag;
  rapidjson::Document parsed;
  parsed.Parse<flags>(text.data(), text.size());
  if (parsed.HasParseError()) return std::nullopt;
  return value_of(parsed, 0);
}

}  // namespace fogsheet
