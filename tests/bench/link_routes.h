// Seeded routes to measure links by: named marks anywhere on an A4 sheet of 1:100 000, and a leg from each to the next.
#pragma once

#include <cstdint>

#include "core/document/document.h"

namespace fogsheet {

/// @param marks  from 2 to 1 000. Names are two invented words of the coast, some with a figure.
Document seeded_route(std::uint64_t seed, int marks);

/// How many characters of base64url any text of that route takes at least, if places and names are all there is to tell:
/// for each mark log2 of the sheet's cells of 0.0001' (latitude times longitude between its neat lines), the order-0 entropy of the
/// names' bytes (as counted in these very names: no text could know them beforehand), one bit a mark for whether a leg joins
/// it to the one before. Six bits a character.
double least_characters(const Document& route);

}  // namespace fogsheet
