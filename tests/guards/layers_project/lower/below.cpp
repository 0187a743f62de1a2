// Keeps the order: includes its own header only.
#include "lower/below.h"

int straw::lower::below() { return 1; }
