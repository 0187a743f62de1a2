// Breaks the order unseen by the compiler: calls a function of the layer above.
namespace straw::upper {
int above();
}

namespace straw::calling {
int call_up();
int call_up() { return straw::upper::above(); }
}  // namespace straw::calling
