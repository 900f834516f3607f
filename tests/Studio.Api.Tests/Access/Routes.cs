namespace Studio.Api.Tests.Access;

/// <summary>A route with the status that each kind of person gets, and a body that is in order.</summary>
public sealed record Route(HttpMethod Method, string Path, IReadOnlyList<int> Statuses, string Body)
{
    /// <summary>As the OpenAPI document writes it.</summary>
    public string Name => $"{Method} {Path.Split('?')[0]}";

    /// <inheritdoc/>
    public override string ToString() => Name;
}

/// <summary>Every route of the API.</summary>
public static class Routes
{
    /// <summary>The table; a route that is not here fails the test, and so does a row without a route.</summary>
    // anonymous, another client, another instructor, her instructor, front desk, the client, owner | body
    public static IReadOnlyList<Route> All { get; } =
    [
        .. Table
            .Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(Parse),
    ];

    /// <summary>Those that take JSON.</summary>
    public static IEnumerable<Route> WithJson => All.Where(r => r.Body.StartsWith('{'));

    private const string Table = """
        GET /healthz | 200 200 200 200 200 200 200 |
        GET /api/demo | 200 200 200 200 200 200 200 |
        GET /api/live | 401 200 200 200 200 200 200 |
        POST /api/session | 200 200 200 200 200 200 200 | {"email":"{account}","password":"{password}"}
        GET /api/session | 401 200 200 200 200 200 200 |
        PUT /api/session/password | 401 204 204 204 204 204 204 | {"current":"{password}","next":"another-harbour-8"}
        DELETE /api/session | 204 204 204 204 204 204 204 |
        GET /api/accounts | 401 403 403 403 403 403 200 |
        POST /api/accounts | 401 403 403 403 403 403 201 | {"email":"{n}@saltmarsh.example","name":"New Person","password":"long-enough-7","roles":["frontDesk"]}
        PUT /api/accounts/{accountId}/roles | 401 403 403 403 403 403 204 | {"roles":["frontDesk","reviewer"]}
        GET /feeds/{address}.ics | 200 200 200 200 200 200 200 |
        HEAD /feeds/{address}.ics | 200 200 200 200 200 200 200 |
        GET /api/feeds | 401 200 200 200 200 200 200 |
        POST /api/feeds | 401 403 201 201 403 403 403 | {"reads":"instructor"}
        PUT /api/feeds/{feedId} | 401 404 404 404 404 204 404 | {"namesClass":true}
        DELETE /api/feeds/{feedId} | 401 404 404 404 404 204 404 |
        GET /api/sessions/{sessionId}/calendar | 401 404 404 200 200 404 200 |
        GET /api/stages | 401 200 200 200 200 200 200 |
        GET /api/factors | 401 200 200 200 200 200 200 |
        GET /api/locations | 401 200 200 200 200 200 200 |
        GET /api/classes | 401 200 200 200 200 200 200 |
        GET /api/policies | 401 403 403 403 403 403 200 |
        GET /api/policies/changes | 401 403 403 403 403 403 200 |
        PUT /api/policies/{code} | 401 403 403 403 403 403 204 | {"value":"28","why":"As it is.","confirmed":false}
        POST /api/policies/{code}/preview | 401 403 403 403 403 403 200 | {"value":"30"}
        GET /api/catalogue/movements | 401 403 200 200 403 403 200 |
        GET /api/catalogue/rules | 401 403 403 403 403 403 200 |
        GET /api/catalogue/sources | 401 403 403 403 403 403 200 |
        GET /api/catalogue/coverage | 401 403 403 403 403 403 200 |
        GET /api/catalogue/versions | 401 403 403 403 403 403 200 |
        GET /api/catalogue/files/{file} | 401 403 403 403 403 403 200 |
        GET /api/catalogue/versions/{version}/files/{file} | 401 403 403 403 403 403 200 |
        POST /api/catalogue/versions/{version}/return?dryRun=true | 401 403 403 403 403 403 200 | {"why":"","basedOn":null}
        GET /api/instructors | 401 403 403 403 403 403 200 |
        POST /api/instructors | 401 403 403 403 403 403 201 | {"name":"Lioba Marrenfeld","called":"Lioba","email":"{n}@saltmarsh.example","phone":"1234567","weeklyMinutesMost":600,"restMinutesLeast":null,"leftOn":null,"confirmed":false}
        GET /api/instructors/{instructorId} | 401 403 404 200 403 403 200 |
        PUT /api/instructors/{instructorId} | 401 403 403 403 403 403 204 | {"name":"Ilka Thornmere","called":"Ilka","email":"{n}@saltmarsh.example","phone":"1234567","weeklyMinutesMost":600,"restMinutesLeast":660,"leftOn":null,"confirmed":false}
        GET /api/instructors/{instructorId}/sessions | 401 403 404 200 403 403 200 |
        POST /api/instructors/{instructorId}/qualifications | 401 403 403 403 403 403 201 | {"kind":"{n}","issuedOn":"2026-01-01","expiresOn":"2027-01-01"}
        POST /api/instructors/{instructorId}/qualifications/{qualificationId}/withdraw | 401 403 403 403 403 403 204 |
        PUT /api/instructors/{instructorId}/qualifications/{qualificationId}/proof | 401 403 403 403 403 403 204 | file:proof.png
        GET /api/instructors/{instructorId}/qualifications/{qualificationId}/proof | 401 403 404 200 403 403 200 |
        PUT /api/instructors/{instructorId}/availability | 401 403 404 200 403 403 200 | {"hours":[{"weekday":1,"from":"09:00","to":"13:00","locationId":null}]}
        POST /api/instructors/{instructorId}/leave | 401 403 404 201 403 403 201 | {"from":"{freeDay}","to":"{freeDay}"}
        DELETE /api/instructors/{instructorId}/leave/{leaveId} | 401 403 404 204 403 403 204 |
        PUT /api/instructors/{instructorId}/wishes | 401 403 404 204 403 403 204 | {"wishes":[{"kind":"partOfDay","value":"morning","weight":2}]}
        GET /api/instructors/{instructorId}/hours | 401 403 404 200 403 403 200 |
        GET /api/instructors/{instructorId}/pay | 401 403 404 200 403 403 200 |
        GET /api/instructors/{instructorId}/pay/file | 401 403 404 200 403 403 200 |
        GET /api/pay | 401 403 403 403 403 403 200 |
        GET /api/pay/file | 401 403 403 403 403 403 200 |
        GET /api/pay/rates | 401 403 403 403 403 403 200 |
        POST /api/pay/rates | 401 403 403 403 403 403 201 | {"instructorId":null,"classId":null,"per":"session","heads":null,"amount":2500,"currency":"EUR","from":"{today}"}
        POST /api/pay/rates/{rateId}/withdraw | 401 403 403 403 403 403 204 |
        GET /api/travel | 401 403 403 403 403 403 200 |
        PUT /api/travel | 401 403 403 403 403 403 200 | {"times":[{"fromLocationId":{location},"toLocationId":{otherLocation},"minutes":1}]}
        POST /api/dating | 401 200 200 200 200 200 200 | {"lastPeriod":"2026-01-05","cycleDays":28,"scan":null,"transfer":null,"stated":null,"on":"{today}"}
        GET /api/clients/{clientId}/datings | 401 404 403 403 200 200 200 |
        POST /api/clients/{clientId}/datings | 401 404 403 403 201 201 201 | {"lastPeriod":"2025-07-27","cycleDays":28,"scan":{"date":"2025-09-21","weeks":8,"days":0},"transfer":null,"stated":null}
        GET /api/clients | 401 403 403 403 200 403 200 |
        POST /api/clients | 401 403 403 403 201 403 201 | {"name":"New Person","called":"New","phone":"1234567","email":"{n}@mail.example","emergencyName":"Near","emergencyPhone":"7654321","homeLocationId":{location},"babies":1,"bornOn":null,"birthMode":null,"dating":{"lastPeriod":"2026-01-05"}}
        GET /api/clients/{clientId} | 401 404 403 403 200 200 200 |
        PUT /api/clients/{clientId} | 401 404 403 403 204 204 204 | {"name":"Same Person","called":"Same","phone":"1234567","email":"{n}@mail.example","emergencyName":"Near","emergencyPhone":"7654321","sharesConditions":false,"bornOn":null,"forgetBornOn":false}
        POST /api/clients/{clientId}/factors | 401 404 403 403 404 201 201 | {"code":"back-pain","from":"{today}","to":null}
        POST /api/clients/{clientId}/factors/{factorId}/end | 401 404 403 403 404 204 204 | {"on":"{today}"}
        POST /api/clients/{clientId}/account | 401 403 403 403 403 403 409 | {"password":"long-enough-7"}
        POST /api/clients/{clientId}/clearances | 401 403 403 403 403 403 201 | {"issuedBy":"Dr Wenna Ashdown","issuedOn":"{today}","expiresOn":"2026-06-01"}
        GET /api/clients/{clientId}/screening | 401 404 403 403 200 200 200 |
        PUT /api/clients/{clientId}/screening/draft | 401 404 403 403 403 204 204 | {"version":1,"answers":{"back-pain":{"value":"yes","since":"{today}"}}}
        POST /api/clients/{clientId}/screening/nothing-changed | 401 404 403 403 204 204 204 |
        GET /api/clients/{clientId}/screenings | 401 404 404 404 404 200 200 |
        POST /api/clients/{clientId}/screenings | 401 404 403 403 201 201 201 | {"version":1,"answers":{answers}}
        GET /api/warning-signs | 401 200 200 200 200 200 200 |
        POST /api/clients/{clientId}/holds | 401 404 404 200 200 200 200 | {"sessionId":null,"signs":["sign-dizzy"],"happened":"She felt faint.","done":"She sat down."}
        GET /api/incidents | 401 403 403 403 403 403 200 |
        POST /api/incidents/{incidentId}/more | 401 403 403 403 403 403 201 | {"happened":"She rang: she is well.","done":null}
        POST /api/clients/{clientId}/birth | 401 404 403 403 200 200 200 | {"on":"{today}","mode":"vaginal"}
        PUT /api/clients/{clientId}/birth | 401 404 403 403 409 409 409 | {"on":"{today}","mode":"vaginal"}
        POST /api/clients/{clientId}/rung | 401 403 403 403 204 403 204 |
        DELETE /api/clients/{clientId}/birth | 401 404 403 403 409 409 409 |
        POST /api/clients/{clientId}/loss | 401 404 403 403 404 200 200 | {"on":"{today}"}
        POST /api/clients/{clientId}/return | 401 403 403 403 403 403 409 | {"dating":{"lastPeriod":"2026-01-05","cycleDays":28,"scan":null,"transfer":null,"stated":null},"bornOn":null,"birthMode":null,"babies":1,"setByMistake":null}
        GET /api/clients/{clientId}/letters | 401 404 403 403 200 200 200 |
        POST /api/clients/{clientId}/letters | 401 404 403 403 201 201 201 | file:letter.png
        GET /api/clients/{clientId}/letters/{letterId}/file | 401 404 404 404 404 200 200 |
        POST /api/clients/{clientId}/letters/{letterId}/review | 401 403 403 403 403 403 204 | {"issuedBy":"Dr Wenna Ashdown","issuedOn":"{today}","expiresOn":"2026-06-01","leaveOut":["supine"],"effortMost":5,"heartRateMost":140,"words":"Sits when she likes.","replacesEarlier":true}
        POST /api/clients/{clientId}/letters/{letterId}/refuse | 401 403 403 403 403 403 204 | {"because":"The second page is missing."}
        POST /api/clients/{clientId}/letters/{letterId}/withdraw | 401 403 403 403 403 403 204 |
        GET /api/clients/{clientId}/letters/request | 401 404 403 403 200 200 200 |
        GET /api/letters/traits | 401 200 200 200 200 200 200 |
        GET /api/letters/people?find=a | 401 403 403 403 403 403 200 |
        GET /api/letters/read | 401 403 403 403 403 403 200 |
        GET /api/letters/waiting | 401 403 403 403 403 403 200 |
        GET /api/letters/waiting/count | 401 403 403 403 403 403 200 |
        GET /api/clients/{clientId}/record | 401 404 403 403 403 200 200 |
        GET /api/clients/{clientId}/record/file | 401 404 403 403 403 200 200 |
        GET /api/clients/{clientId}/erasure | 401 404 403 403 403 200 200 |
        POST /api/clients/{clientId}/erasure/wish | 401 404 403 403 403 204 204 |
        DELETE /api/clients/{clientId}/erasure/wish | 401 404 403 403 403 404 404 |
        POST /api/clients/{clientId}/erasure | 401 403 403 403 403 403 200 | {"name":"{clientName}","seen":"{seen}"}
        GET /api/erasures | 401 403 403 403 403 403 200 |
        GET /api/erasures/{erasureId}/kept | 401 403 403 403 403 403 200 |
        GET /api/erasures/{erasureId}/letters/{letterId}/file | 401 403 403 403 403 403 200 |
        GET /api/audit?client={clientId} | 401 404 403 403 403 200 200 |
        GET /api/audit/check | 401 403 403 403 403 403 200 |
        GET /api/clients/{clientId}/sessions | 401 404 403 403 200 200 200 |
        GET /api/clients/{clientId}/sessions/{sessionId} | 401 404 404 404 200 200 200 |
        GET /api/clients/{clientId}/notes | 401 404 404 404 404 200 200 |
        GET /api/clients/{clientId}/bookings | 401 404 403 403 200 200 200 |
        GET /api/sessions | 401 403 200 200 200 403 200 |
        GET /api/sessions/{sessionId} | 401 403 404 200 200 403 200 |
        GET /api/sessions/{sessionId}/roster | 401 403 404 200 200 403 200 |
        POST /api/sessions/{sessionId}/roster/read | 401 403 404 204 204 403 204 |
        POST /api/sessions/{sessionId}/bookings | 401 404 403 403 201 201 201 | {"clientId":{clientId}}
        GET /api/sessions/{sessionId}/cover | 401 403 404 200 200 403 200 |
        POST /api/sessions/{sessionId}/cover | 401 403 404 201 403 403 201 |
        DELETE /api/sessions/{sessionId}/cover | 401 403 404 409 403 403 409 |
        PUT /api/sessions/{sessionId}/cover/answer | 401 403 404 404 403 403 404 | {"answer":"can"}
        POST /api/sessions/{sessionId}/cover/take | 401 403 404 404 403 403 404 | {"anyway":false}
        GET /api/cover | 401 403 403 403 200 403 200 |
        GET /api/cover/mine | 401 403 200 200 200 403 200 |
        POST /api/cover/away | 401 403 403 200 403 403 409 | {"from":"{today}","to":"2026-03-30","instructorId":{instructorId}}
        POST /api/cover/plan | 401 403 403 403 403 403 200 | {"sessionIds":[{sessionId}]}
        POST /api/cover/settle | 401 403 403 403 403 403 409 | {"covers":[{"sessionId":{sessionId},"instructorId":{instructorId}}],"anyway":false}
        GET /api/sessions/{sessionId}/notes | 401 403 404 200 403 403 200 |
        POST /api/sessions/{sessionId}/notes | 401 403 404 201 403 403 201 | {"clientId":{clientId},"text":"Steady on one leg at the wall."}
        PUT /api/notes/{noteId} | 401 403 404 200 403 403 403 | {"text":"Steadier than last week.","version":1}
        DELETE /api/notes/{noteId} | 401 403 404 204 403 403 204 |
        DELETE /api/bookings/{bookingId} | 401 404 403 403 200 200 200 |
        POST /api/bookings/{bookingId}/check-in | 401 403 404 204 204 403 204 | {"answer":"allWell"}
        DELETE /api/bookings/{bookingId}/check-in | 401 403 404 204 204 403 204 |
        GET /api/flags | 401 403 200 200 200 403 200 |
        POST /api/flags/{flagId}/read | 401 403 404 204 204 403 204 |
        GET /api/movements | 401 403 200 200 403 403 200 |
        GET /api/classes/{classId}/plan | 401 403 200 200 403 403 200 |
        GET /api/classes/{classId}/plan/versions/{version} | 401 403 200 200 403 403 200 |
        PUT /api/classes/{classId}/plan | 401 403 403 403 403 403 200 | {"basedOn":1,"items":[{"movement":"rib-breathing","minutes":2},{"movement":"leg-slides","minutes":3}]}
        GET /api/sessions/{sessionId}/plan | 401 403 404 200 403 403 200 |
        PUT /api/sessions/{sessionId}/plan | 401 403 404 200 403 403 200 | {"basedOn":0,"items":[{"movement":"rib-breathing","minutes":2},{"movement":"leg-slides","minutes":3}]}
        DELETE /api/sessions/{sessionId}/plan | 401 403 404 200 403 403 200 |
        POST /api/sessions/{sessionId}/plan/preview | 401 403 404 200 403 403 200 | {"items":[{"movement":"rib-breathing","minutes":2},{"movement":"leg-slides","minutes":3}]}
        POST /api/sessions/{sessionId}/plan/suit | 401 403 404 200 403 403 200 | {"items":[{"movement":"rib-breathing","minutes":2},{"movement":"leg-slides","minutes":3}]}
        POST /api/what-if | 401 403 200 200 403 403 200 | {"stage":"third-trimester","dueDate":null,"on":"{today}","birthMode":null,"factors":["separation-now"],"restrictions":["supine"],"effortMost":5,"planId":null}
        GET /api/timetable?from={today}&to={today} | 401 403 403 403 403 403 200 |
        GET /api/drafts | 401 403 403 403 403 403 200 |
        POST /api/drafts | 401 403 403 403 403 403 201 | {"name":"Spring","from":"{today}","to":"{today}"}
        GET /api/drafts/{draftId} | 401 403 403 403 403 403 200 |
        PUT /api/drafts/{draftId}/sessions | 401 403 403 403 403 403 400 | {"version":1,"put":[{"id":null,"classId":999999,"roomId":999999,"instructorId":null,"on":"{today}","startsLocal":"09:00","minutes":50,"seats":8,"isHeld":true}],"remove":[]}
        POST /api/drafts/{draftId}/check | 401 403 403 403 403 403 400 | {"session":{"id":null,"classId":999999,"roomId":999999,"instructorId":null,"on":"{today}","startsLocal":"09:00","minutes":50,"seats":8,"isHeld":true}}
        POST /api/drafts/{draftId}/copy-week | 401 403 403 403 403 403 400 | {"version":1,"from":"{today}","to":"{today}"}
        POST /api/drafts/{draftId}/meanwhile | 401 403 403 403 403 403 400 | {"version":1,"row":999999,"keep":"mine"}
        GET /api/drafts/{draftId}/consequences | 401 403 403 403 403 403 200 |
        POST /api/drafts/{draftId}/publish | 401 403 403 403 403 403 200 | {"version":1,"anyway":true}
        DELETE /api/drafts/{draftId} | 401 403 403 403 403 403 204 |
        PUT /api/sessions/{sessionId} | 401 403 403 403 403 403 200 | {"on":"2026-03-20","startsLocal":"10:00","minutes":50,"roomId":{roomId},"instructorId":null,"seats":9,"isHeld":true,"anyway":true}
        GET /api/series | 401 403 403 403 403 403 200 |
        POST /api/series/preview | 401 403 403 403 403 403 200 | {"rule":"FREQ=WEEKLY;BYDAY=TU","start":"2026-03-03","startsLocal":"18:00","zone":"Europe/Lisbon","exceptions":["2026-03-10"],"anyway":false}
        POST /api/series | 401 403 403 403 403 403 201 | {"rule":"FREQ=WEEKLY;BYDAY=TU;COUNT=3","start":"2026-03-03","startsLocal":"18:00","classId":{anyClass},"roomId":{roomId},"instructorId":null,"minutes":50,"seats":9,"anyway":false}
        GET /api/series/{seriesId} | 401 403 403 403 403 403 200 |
        POST /api/series/{seriesId}/changes | 401 403 403 403 403 403 200 | {"scope":"all","startsLocal":"10:00","roomId":{roomId},"instructorId":null,"minutes":50,"seats":9,"byHandToo":false,"anyway":false}
        POST /api/series/{seriesId}/end | 401 403 403 403 403 403 200 | {"lastOn":"2026-03-20"}
        PUT /api/series/{seriesId}/exceptions/{on} | 401 403 403 403 403 403 200 |
        DELETE /api/series/{seriesId}/exceptions/{on} | 401 403 403 403 403 403 200 |
        GET /api/closures | 401 403 403 403 403 403 200 |
        POST /api/closures | 401 403 403 403 403 403 200 | {"locationId":{location},"from":"2026-08-01","to":"2026-08-14","kind":"closure","name":"Shut {n}","callOff":false}
        POST /api/closures/import?dryRun=true | 401 403 403 403 403 403 200 | file:holidays.csv
        POST /api/closures/{closureId}/call-off | 401 403 403 403 403 403 200 |
        DELETE /api/closures/{closureId} | 401 403 403 403 403 403 200 |
        GET /api/pass-kinds | 401 403 403 403 200 403 200 |
        POST /api/pass-kinds | 401 403 403 403 403 403 201 | {"name":"Ten {n}","form":"classes","credits":10,"runsDays":70,"price":12000,"currency":"EUR","taxPerMille":230,"carriesOver":true,"onSale":true,"classIds":[],"sessionIds":[]}
        PUT /api/pass-kinds/{passKindId} | 401 403 403 403 403 403 204 | {"name":"Six {n}","form":"classes","credits":6,"runsDays":42,"price":9000,"currency":"EUR","taxPerMille":230,"carriesOver":true,"onSale":true,"classIds":[],"sessionIds":[]}
        GET /api/clients/{clientId}/passes | 401 404 403 403 200 200 200 |
        POST /api/clients/{clientId}/passes | 401 403 403 403 201 403 201 | {"kindId":{passKindId},"paidHow":"cash","startsOn":null}
        POST /api/passes/{passId}/goodwill | 401 403 403 403 200 403 200 | {"credits":1,"reason":"The heating was out."}
        POST /api/passes/{passId}/refund | 401 403 403 403 200 403 200 | {"amount":1000,"paidHow":"cash","reason":"She moves away."}
        GET /api/takings/file | 401 403 403 403 403 403 200 |
        GET /api/outstanding-credits/file | 401 403 403 403 403 403 200 |
        GET /api/let-go | 401 403 403 403 200 403 200 |
        POST /api/let-go/{bookingId}/seen-to | 401 403 403 403 204 403 204 |
        GET /api/moves | 401 200 403 403 200 200 200 |
        POST /api/moves/{moveId}/accept | 401 404 403 403 200 200 200 |
        POST /api/moves/{moveId}/decline | 401 404 403 403 204 204 204 | {"reason":"She would rather stay."}
        GET /api/messages | 401 403 403 403 403 403 200 |
        GET /api/messages/counts | 401 403 403 403 403 403 200 |
        GET /api/messages/kinds | 401 403 403 403 403 403 200 |
        POST /api/messages/test | 401 403 403 403 403 403 204 |
        POST /api/messages/retry | 401 403 403 403 403 403 200 |
        GET /api/messages/{messageId} | 401 403 403 403 403 403 200 |
        GET /api/messages/{messageId}/file | 401 403 403 403 403 403 404 |
        POST /api/messages/{messageId}/retry | 401 403 403 403 403 403 204 |
        GET /api/messages/mine | 401 200 200 200 200 200 200 |
        GET /api/messages/choices | 401 200 200 200 200 200 200 |
        PUT /api/messages/choices/{kind} | 401 204 404 404 404 204 404 | {"wanted":false}
        GET /api/mail-stops/{token} | 200 200 200 200 200 200 200 |
        POST /api/mail-stops/{token} | 204 204 204 204 204 204 204 |
        GET /api/assignments | 401 403 403 403 403 403 200 |
        POST /api/assignments | 401 403 403 403 403 403 202 | {"from":"{today}","to":"2026-03-20","change":"all"}
        GET /api/assignments/{assignmentId} | 401 403 403 403 403 403 200 |
        DELETE /api/assignments/{assignmentId} | 401 403 403 403 403 403 204 |
        POST /api/assignments/{assignmentId}/draft | 401 403 403 403 403 403 200 |
        GET /api/jobs | 401 403 403 403 403 403 200 |
        POST /api/jobs/{name}/run | 401 403 403 403 403 403 200 |
        GET /api/imports/clients/example | 401 403 403 403 403 403 200 |
        POST /api/imports/catalogue?dryRun=true | 401 403 403 403 403 403 200 | {"files":[{"name":"stages.csv","text":"code"}],"why":"","basedOn":null}
        POST /api/imports/clients?dryRun=true | 401 403 403 403 403 403 200 | name,phone,home_location
        """;

    private static Route Parse(string line)
    {
        var parts = line.Split('|', 3, StringSplitOptions.TrimEntries);
        var route = parts[0].Split(' ');
        return new Route(
            new HttpMethod(route[0]),
            route[1],
            [.. parts[1].Split(' ').Select(int.Parse)],
            parts[2]
        );
    }
}
