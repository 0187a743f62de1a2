// Ctrl-C and SIGTERM: work in hand is put away before the program ends.
#pragma once

namespace lardiner::command {

/// From now on these signals only ask.
void watch_for_stop();
bool stop_asked();
/// Ends the program by the signal that asked, if one did, so that its caller sees what happened.
void stop_if_asked();

}  // namespace lardiner::command
