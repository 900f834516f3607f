using System.Data;
using Dapper;
using NodaTime;
using NodaTime.Text;

namespace Studio.Api.Data;

/// <summary>Days and times are ISO text in the database; moments are UTC with milliseconds, so that text sorts as time.</summary>
public static class TypeHandlers
{
    private static readonly InstantPattern Moment = InstantPattern.CreateWithInvariantCulture(
        "uuuu-MM-ddTHH:mm:ss.fff'Z'"
    );
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    /// <summary>Tells Dapper; safe to call again.</summary>
    public static void Register()
    {
        SqlMapper.AddTypeHandler(new TextHandler<LocalDate>(LocalDatePattern.Iso));
        SqlMapper.AddTypeHandler(new TextHandler<LocalTime>(Clock));
        SqlMapper.AddTypeHandler(new TextHandler<Instant>(Moment));
    }

    private sealed class TextHandler<T>(IPattern<T> pattern) : SqlMapper.TypeHandler<T>
    {
        public override void SetValue(IDbDataParameter parameter, T? value)
        {
            parameter.DbType = DbType.String;
            parameter.Value = value is null ? DBNull.Value : pattern.Format(value);
        }

        public override T Parse(object value) => pattern.Parse((string)value).Value;
    }
}
