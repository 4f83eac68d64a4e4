// GeographicLib's configuration, which its own build would generate. Double precision, and no long double even where
// there is one: native tests speak for the web build.
#pragma once

#define GEOGRAPHICLIB_VERSION_STRING "2.1.2"
#define GEOGRAPHICLIB_VERSION_MAJOR 2
#define GEOGRAPHICLIB_VERSION_MINOR 1
#define GEOGRAPHICLIB_VERSION_PATCH 2
#define GEOGRAPHICLIB_DATA ""
#define GEOGRAPHICLIB_HAVE_LONG_DOUBLE 0
#define GEOGRAPHICLIB_WORDS_BIGENDIAN 0
#define GEOGRAPHICLIB_PRECISION 2
#define GEOGRAPHICLIB_SHARED_LIB 0
