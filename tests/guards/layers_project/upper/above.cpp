// Keeps the order: calls the layer below.
#include "upper/above.h"

#include "lower/below.h"

int straw::upper::above() { return straw::lower::below(); }
