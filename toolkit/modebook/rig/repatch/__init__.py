"""The smallest change to a patch that satisfies a rig's demands, solved exactly and written back as typed."""
