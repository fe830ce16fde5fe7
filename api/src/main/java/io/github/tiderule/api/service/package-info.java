/**
 * The HTTP service. The only package that knows of requests, routes and status codes; its contract
 * is {@code openapi.yaml} beside the schemas.
 */
@NullMarked
package io.github.tiderule.api.service;

import org.jspecify.annotations.NullMarked;
