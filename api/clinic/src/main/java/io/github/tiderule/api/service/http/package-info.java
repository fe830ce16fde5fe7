/**
 * What every route works with: who asks and may, what a request carries, what is answered or
 * refused, and how much is taken on at a time. Knows no route.
 */
@NullMarked
package io.github.tiderule.api.service.http;

import org.jspecify.annotations.NullMarked;
