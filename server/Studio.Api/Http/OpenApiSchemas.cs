using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using NodaTime;

namespace Studio.Api.Http;

/// <summary>How NodaTime's types look in the document: as the strings they are on the wire.</summary>
public static class OpenApiSchemas
{
    /// <summary>Adds the transformers.</summary>
    public static void Describe(this OpenApiOptions options)
    {
        options.AddDocumentTransformer(
            (document, _, _) =>
            {
                document.Info.Title = "Studio";
                document.Info.Description =
                    "Scheduling and rosters with stage-aware class matching.";
                document.Servers = [];
                return Task.CompletedTask;
            }
        );
        options.AddSchemaTransformer(
            (schema, context, _) =>
            {
                var type =
                    Nullable.GetUnderlyingType(context.JsonTypeInfo.Type)
                    ?? context.JsonTypeInfo.Type;
                var format =
                    type == typeof(LocalDate) || type == typeof(QueryDay) ? "date"
                    : type == typeof(Instant) ? "date-time"
                    : type == typeof(LocalTime) ? "time"
                    : null;
                if (format is not null)
                {
                    // One schema serves every use; where a date may be missing, the use itself says so.
                    schema.Type = JsonSchemaType.String;
                    schema.Format = format;
                    schema.Properties?.Clear();
                }

                return Task.CompletedTask;
            }
        );
    }
}
