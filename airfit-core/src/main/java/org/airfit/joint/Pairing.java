package org.airfit.joint;

import org.airfit.source.Source;

/** How two ends go together, why, and the standard or practice that says so. */
record Pairing(MatingVerdict verdict, String reason, Source source) {}
