// Calls nothing of the layer that it tests.
namespace straw {
int nothing();
int nothing() { return 0; }
}  // namespace straw
