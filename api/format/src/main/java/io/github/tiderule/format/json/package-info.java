/** Writing advice and refusals as JSON documents. */
@NullMarked
package io.github.tiderule.format.json;

import org.jspecify.annotations.NullMarked;
