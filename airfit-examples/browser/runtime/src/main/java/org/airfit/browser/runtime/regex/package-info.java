/** Regular expressions by those of JavaScript, in place of {@code java.util.regex}. */
@NullMarked
package org.airfit.browser.runtime.regex;

import org.jspecify.annotations.NullMarked;
