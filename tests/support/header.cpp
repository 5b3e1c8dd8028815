// Holds the precompiled test header.
