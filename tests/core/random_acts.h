// Random acts on a document, all by the named actions, from a seeded generator: for properties that must hold after any of
// them.
#pragma once

#include <string>

#include "core/base/random.h"
#include "core/document/actions.h"

namespace fogsheet {

/// A name of 1 to 12 characters, among them some of two to four bytes.
std::string random_name(Random& random);

/// What makes a sheet of any paper and scale somewhere between 70 deg south and north, often near 180 deg.
NewSheet random_sheet(Random& random);

Position random_place_on(Random& random, const Document& document);

/// One act that succeeded; acts that are refused are tried again with others. Adds outweigh removals.
void do_random_act(Random& random, History& history);

/// A document of up to that many acts.
Document random_document(Random& random, int acts);

}  // namespace fogsheet
