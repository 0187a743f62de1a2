// Compiles show.h alone; its precompiled form serves every test program.
#include "show.h"
