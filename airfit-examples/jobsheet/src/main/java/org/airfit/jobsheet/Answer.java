package org.airfit.jobsheet;

/** One line of a sheet's summary. */
record Answer(String what, String answer) {}
