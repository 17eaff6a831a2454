/**
 * Where numbers come from.
 *
 * <p>Here is the vocabulary only: a {@link org.airfit.source.Source} and its {@link org.airfit.source.Basis}. The
 * sources themselves stand beside the numbers they belong to.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>A {@code null} argument throws {@link NullPointerException}.
 *   <li>Everything is immutable and thread-safe.
 * </ul>
 */
@NullMarked
package org.airfit.source;

import org.jspecify.annotations.NullMarked;
