// Expat's configuration, which its own build would generate. Parameter entities and external ones are left out with XML_DTD.
// Its hash tables get their salt from us (core/exchange/xml.cpp), so that a file is read alike every time.
#pragma once

#define BYTEORDER 1234
#define HAVE_MEMMOVE 1
#define XML_NS 1
#define XML_CONTEXT_BYTES 0
#define XML_POOR_ENTROPY 1
