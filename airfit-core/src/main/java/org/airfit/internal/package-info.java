/** Helpers that several floors share. Not exported: nothing here is API, and anything may change. */
@NullMarked
package org.airfit.internal;

import org.jspecify.annotations.NullMarked;
