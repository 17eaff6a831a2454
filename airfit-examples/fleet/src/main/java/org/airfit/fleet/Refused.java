package org.airfit.fleet;

/**
 * Why a row has no verdict.
 *
 * @param field the field as its column is called; empty for the row as a whole
 * @param value what stands there; empty for nothing
 * @param reason what is wrong with it and what is accepted
 */
record Refused(String field, String value, String reason) {}
