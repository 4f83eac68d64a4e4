// The three questions of the stream's triangle, and distance, speed and time, asked on their own: typed in a slip, answered
// as soon as there is enough.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/fault.h"
#include "core/directions/chain.h"
#include "core/passage/stream_triangle.h"
#include "core/positions/position.h"

namespace fogsheet {

struct Session;

/// By name: "steer" (what is steered along a track), "made-good" (where a heading takes the boat), "stream" (what stream put her
/// at a fix), "run" (distance, speed and time).
inline constexpr std::string_view k_questions[] = {"steer", "made-good", "stream", "run"};
/// The fields of all of them; each is kept from one question to the next.
inline constexpr std::string_view k_question_fields[] = {"track", "heading", "speed", "set", "drift", "minutes", "from", "fix", "distance"};

struct StreamAnswer {
  struct Line {
    std::string text;
    std::string value;
    bool strong = false;
  };
  std::vector<Line> lines;
  std::optional<Chain> chain;      // of what is steered
  std::optional<Problem> problem;  // why there is none, of what was typed as a whole
  std::optional<Stream> stream;    // that was found
  std::optional<Position> place;   // where the boat is then
};

/// Which question is asked; "steer" at first.
std::string question_in_hand(const Session& session);
/// What was typed into a field, or stands there from the leg or passage in hand.
std::string question_text(const Session& session, std::string_view field);
/// The names of the fields that a question has, in their order.
std::vector<std::string_view> fields_of(const std::string& question);

/// What is wrong with a field as it is typed; none when it is empty.
std::optional<Problem> question_fault(const Session& session, std::string_view field);

/// Empty without a problem while a field is still to be filled.
StreamAnswer answer(const Session& session);

}  // namespace fogsheet
