/**
 * Numerics and writers that several packages share: statistics, the root finder, digits, the SVG writer, the table
 * reader. Not exported: nothing here is API, and anything may change. It uses no other package.
 */
@NullMarked
package org.airfit.internal;

import org.jspecify.annotations.NullMarked;
