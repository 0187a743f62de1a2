// Breaks the order: includes a header of the layer above.
#include "upper/above.h"
