### What happened to a request that is not answered, for whoever writes or runs the program that sent it.

## The body

problems-body-larger = The body is larger than { $limit } bytes, the most that this path takes. Send less, or several requests.
problems-body-broke-off = The body broke off: { $reason }.
problems-body-empty = The body is empty. Send one JSON object.
problems-body-not-json = The body is not one JSON text: { $reason }. Send one JSON object.
problems-body-too-deep = The body nests more than { $depth } objects and arrays. No request needs as many; send one JSON object.
problems-header-twice = The header { $header } stands more than once. Send one.
problems-fields = { $listed ->
    [one] One field cannot be used; the list of errors says what to send instead.
    [all] { $fields } fields cannot be used; the list of errors says what to send instead.
   *[first] { $fields } fields cannot be used; the list of errors has the first { $most }, and says what to send instead.
}

## The address, the page and the key

problems-no-such-kind = There is no such kind of problem; /v1/reference/problems lists them.
problems-methods = This path takes { $methods }.
problems-head-larger = The request line and its headers are larger than { $limit } bytes. Send fewer or shorter headers; what is to be computed belongs in the body.
problems-page-method = Pages of other sites call with { $methods }; the method that was asked for is not taken.
problems-page-origin = The origin of the page is not among those that may call. The operator of the service sets them.
problems-page-headers = Not taken from pages of other sites: { $refused }. Leave it out; { $taken } are taken.
problems-key-expired = The key has expired at { $end }. Ask the operator of the service for another, and send it as: Authorization: Bearer KEY.
problems-key-unknown = The key is not one that the service knows. Send the key that its operator gave you as: Authorization: Bearer KEY.
problems-key-no-origin = The key is for pages, and the request names none: it has no Origin header, which browsers send. From a program, call with a secret key; the operator of the service gives it out.
problems-key-origin = The key is not for pages of the origin { $origin }. The operator of the service must add that origin to the key, exactly so.
problems-key-path = The key is not for the path { $path }. Call one of its paths exactly as the operator of the service has listed it, or ask the operator to add this one to the key.

## What is too much at once

problems-arriving = { $whose ->
    [all] The bodies that are arriving are as large as the instance takes. Repeat the request after the seconds in Retry-After.
   *[caller] Your bodies that are arriving are as large as the instance takes of one caller. Send fewer at once, each in one go.
}
problems-batches = { $whose ->
    [all] The instance has as many batches in work as it takes.
   *[caller] You have as many batches in work as one caller may.
} Repeat the request after the seconds in Retry-After.
problems-item-not-begun = { $reason ->
    [out_of_time] The batch ran out of time before this item was begun. Send it again, in a smaller batch.
   *[answer_too_large] The answer to the batch was as large as it may be before this item was begun. Send it again, in another batch.
}
problems-forecast-paused = The weather service wants no questions for a while. Send the weather hour by hour instead of the place; or repeat the request after the seconds in Retry-After.

## The pages of problems

problems-page-status = Status { $status }, code
problems-page-fields = Codes of single fields
