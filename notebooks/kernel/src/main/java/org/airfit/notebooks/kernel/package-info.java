/**
 * A small Java kernel for Jupyter.
 *
 * <p>It runs the notebooks of this repository where the usual Java kernel cannot be had, and in the tests without
 * Jupyter. It knows the line magics {@code %classpath} and {@code %jars} and the notebook functions {@code render},
 * {@code display} and their kin, so that a notebook runs unchanged under either.
 */
@NullMarked
package org.airfit.notebooks.kernel;

import org.jspecify.annotations.NullMarked;
