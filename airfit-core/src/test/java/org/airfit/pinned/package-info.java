/**
 * Five hundred answers of the library as they were when a user last heard of them. They detect a change and prove
 * nothing: whether an answer is right, the tests beside the code of each package say.
 *
 * <p>May use: everything public of the library.
 */
@NullMarked
package org.airfit.pinned;

import org.jspecify.annotations.NullMarked;
