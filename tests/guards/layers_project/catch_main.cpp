// The entry of the test programs of straw.
int main() { return 0; }
