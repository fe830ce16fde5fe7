/** Writing advice and refusals as JSON documents. */
@NullMarked
package io.github.tiderule.api.json;

import org.jspecify.annotations.NullMarked;
