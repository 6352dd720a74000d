using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

#pragma warning disable CA1814 // Prefer jagged arrays over multidimensional

namespace Toepan.Api.Store.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.EnsureSchema(
                name: "lab");

            migrationBuilder.EnsureSchema(
                name: "pub");

            migrationBuilder.CreateTable(
                name: "account",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    user_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: false),
                    normalized_user_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    email_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    password_hash = table.Column<string>(type: "text", nullable: true),
                    security_stamp = table.Column<string>(type: "text", nullable: true),
                    concurrency_stamp = table.Column<string>(type: "text", nullable: true),
                    phone_number = table.Column<string>(type: "text", nullable: true),
                    phone_number_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    two_factor_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    lockout_end = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    lockout_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    access_failed_count = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "audit",
                schema: "lab",
                columns: table => new
                {
                    sequence = table.Column<long>(type: "bigint", nullable: false, defaultValueSql: "0"),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    who = table.Column<string>(type: "text", nullable: false),
                    action = table.Column<string>(type: "text", nullable: false),
                    entity = table.Column<string>(type: "text", nullable: false),
                    before = table.Column<string>(type: "jsonb", nullable: true),
                    after = table.Column<string>(type: "jsonb", nullable: true),
                    previous_hash = table.Column<byte[]>(type: "bytea", nullable: false, defaultValueSql: "''::bytea"),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false, defaultValueSql: "''::bytea")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_audit", x => x.sequence);
                });

            migrationBuilder.CreateTable(
                name: "data_protection_key",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    xml = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_data_protection_key", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "release",
                schema: "pub",
                columns: table => new
                {
                    slug = table.Column<string>(type: "text", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    document = table.Column<string>(type: "jsonb", nullable: false),
                    visible_from = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    visible_to = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_release", x => new { x.slug, x.version });
                    table.CheckConstraint("ck_release_version", "version > 0");
                });

            migrationBuilder.CreateTable(
                name: "role",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    concurrency_stamp = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_role", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "token",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    roles = table.Column<string[]>(type: "text[]", nullable: false),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    created_by = table.Column<string>(type: "text", nullable: false),
                    expires_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    revoked_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    last_used_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_token", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "vehicle_class",
                schema: "lab",
                columns: table => new
                {
                    key = table.Column<string>(type: "text", nullable: false),
                    title = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_vehicle_class", x => x.key);
                });

            migrationBuilder.CreateTable(
                name: "account_claim",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    claim_type = table.Column<string>(type: "text", nullable: true),
                    claim_value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_claim", x => x.id);
                    table.ForeignKey(
                        name: "fk_account_claim_account_user_id",
                        column: x => x.user_id,
                        principalSchema: "lab",
                        principalTable: "account",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_login",
                schema: "lab",
                columns: table => new
                {
                    login_provider = table.Column<string>(type: "text", nullable: false),
                    provider_key = table.Column<string>(type: "text", nullable: false),
                    provider_display_name = table.Column<string>(type: "text", nullable: true),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_login", x => new { x.login_provider, x.provider_key });
                    table.ForeignKey(
                        name: "fk_account_login_account_user_id",
                        column: x => x.user_id,
                        principalSchema: "lab",
                        principalTable: "account",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_token",
                schema: "lab",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    login_provider = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_token", x => new { x.user_id, x.login_provider, x.name });
                    table.ForeignKey(
                        name: "fk_account_token_account_user_id",
                        column: x => x.user_id,
                        principalSchema: "lab",
                        principalTable: "account",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_role",
                schema: "lab",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    role_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_role", x => new { x.user_id, x.role_id });
                    table.ForeignKey(
                        name: "fk_account_role_account_user_id",
                        column: x => x.user_id,
                        principalSchema: "lab",
                        principalTable: "account",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_account_role_role_role_id",
                        column: x => x.role_id,
                        principalSchema: "lab",
                        principalTable: "role",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "role_claim",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    role_id = table.Column<Guid>(type: "uuid", nullable: false),
                    claim_type = table.Column<string>(type: "text", nullable: true),
                    claim_value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_role_claim", x => x.id);
                    table.ForeignKey(
                        name: "fk_role_claim_role_role_id",
                        column: x => x.role_id,
                        principalSchema: "lab",
                        principalTable: "role",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "vehicle",
                schema: "lab",
                columns: table => new
                {
                    key = table.Column<string>(type: "text", nullable: false),
                    class_key = table.Column<string>(type: "text", nullable: false),
                    make = table.Column<string>(type: "text", nullable: true),
                    model = table.Column<string>(type: "text", nullable: true),
                    model_year_from = table.Column<int>(type: "integer", nullable: true),
                    model_year_to = table.Column<int>(type: "integer", nullable: true),
                    kerb_mass_kg = table.Column<decimal>(type: "numeric", nullable: true),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_vehicle", x => x.key);
                    table.ForeignKey(
                        name: "fk_vehicle_vehicle_class_class_key",
                        column: x => x.class_key,
                        principalSchema: "lab",
                        principalTable: "vehicle_class",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "test_run",
                schema: "lab",
                columns: table => new
                {
                    test = table.Column<string>(type: "text", nullable: false),
                    vehicle_key = table.Column<string>(type: "text", nullable: false),
                    procedure = table.Column<string>(type: "text", nullable: false),
                    date = table.Column<DateOnly>(type: "date", nullable: false),
                    laboratory = table.Column<string>(type: "text", nullable: true),
                    repeat_of = table.Column<string>(type: "text", nullable: true),
                    occupants = table.Column<string>(type: "jsonb", nullable: false),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_test_run", x => x.test);
                    table.ForeignKey(
                        name: "fk_test_run_vehicle_vehicle_key",
                        column: x => x.vehicle_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "vehicle_twin",
                schema: "lab",
                columns: table => new
                {
                    vehicle_key = table.Column<string>(type: "text", nullable: false),
                    twin_key = table.Column<string>(type: "text", nullable: false),
                    evidence = table.Column<string>(type: "text", nullable: false),
                    added_by = table.Column<string>(type: "text", nullable: false),
                    added_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_vehicle_twin", x => new { x.vehicle_key, x.twin_key });
                    table.ForeignKey(
                        name: "fk_vehicle_twin_vehicle_twin_key",
                        column: x => x.twin_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_vehicle_twin_vehicle_vehicle_key",
                        column: x => x.vehicle_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "package",
                schema: "lab",
                columns: table => new
                {
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    test = table.Column<string>(type: "text", nullable: false),
                    content_sha256 = table.Column<string>(type: "text", nullable: false),
                    length = table.Column<long>(type: "bigint", nullable: false),
                    top_folder = table.Column<string>(type: "text", nullable: true),
                    programme = table.Column<string>(type: "jsonb", nullable: false),
                    test_header = table.Column<string>(type: "jsonb", nullable: false),
                    attachments = table.Column<string>(type: "jsonb", nullable: false),
                    problems = table.Column<string>(type: "jsonb", nullable: false),
                    uploaded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    uploaded_by = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_package", x => x.sha256);
                    table.ForeignKey(
                        name: "fk_package_test_run_test",
                        column: x => x.test,
                        principalSchema: "lab",
                        principalTable: "test_run",
                        principalColumn: "test",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "channel",
                schema: "lab",
                columns: table => new
                {
                    package_sha256 = table.Column<string>(type: "text", nullable: false),
                    ordinal = table.Column<int>(type: "integer", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    file = table.Column<string>(type: "text", nullable: false),
                    unit = table.Column<string>(type: "text", nullable: false),
                    first_sample_s = table.Column<double>(type: "double precision", nullable: true),
                    interval_s = table.Column<double>(type: "double precision", nullable: true),
                    count = table.Column<int>(type: "integer", nullable: false),
                    amplitude_class = table.Column<double>(type: "double precision", nullable: true),
                    header_filter_class = table.Column<string>(type: "text", nullable: true),
                    stated_count = table.Column<int>(type: "integer", nullable: true),
                    first_bad_sample = table.Column<int>(type: "integer", nullable: true),
                    first_sample_line = table.Column<int>(type: "integer", nullable: false),
                    unfit_reason = table.Column<string>(type: "text", nullable: true),
                    header = table.Column<string>(type: "jsonb", nullable: false),
                    samples = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_channel", x => new { x.package_sha256, x.ordinal });
                    table.ForeignKey(
                        name: "fk_channel_package_package_sha256",
                        column: x => x.package_sha256,
                        principalSchema: "lab",
                        principalTable: "package",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "channel_flag",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    package_sha256 = table.Column<string>(type: "text", nullable: false),
                    test = table.Column<string>(type: "text", nullable: false),
                    channel = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    from_s = table.Column<double>(type: "double precision", nullable: true),
                    factor = table.Column<double>(type: "double precision", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_channel_flag", x => x.id);
                    table.ForeignKey(
                        name: "fk_channel_flag_package_package_sha256",
                        column: x => x.package_sha256,
                        principalSchema: "lab",
                        principalTable: "package",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "clearance",
                schema: "lab",
                columns: table => new
                {
                    package_sha256 = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    opposing_point = table.Column<string>(type: "text", nullable: false),
                    distance = table.Column<double>(type: "double precision", nullable: false),
                    line = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_clearance", x => new { x.package_sha256, x.number });
                    table.ForeignKey(
                        name: "fk_clearance_package_package_sha256",
                        column: x => x.package_sha256,
                        principalSchema: "lab",
                        principalTable: "package",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "finding",
                schema: "lab",
                columns: table => new
                {
                    package_sha256 = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    time_ms = table.Column<double>(type: "double precision", nullable: true),
                    camera = table.Column<string>(type: "text", nullable: true),
                    kind = table.Column<string>(type: "text", nullable: false),
                    region = table.Column<string>(type: "text", nullable: false),
                    severity = table.Column<string>(type: "text", nullable: false),
                    note = table.Column<string>(type: "text", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: true),
                    line = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_finding", x => new { x.package_sha256, x.number });
                    table.ForeignKey(
                        name: "fk_finding_package_package_sha256",
                        column: x => x.package_sha256,
                        principalSchema: "lab",
                        principalTable: "package",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "package_chunk",
                schema: "lab",
                columns: table => new
                {
                    package_sha256 = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_package_chunk", x => new { x.package_sha256, x.number });
                    table.ForeignKey(
                        name: "fk_package_chunk_package_package_sha256",
                        column: x => x.package_sha256,
                        principalSchema: "lab",
                        principalTable: "package",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "reduction",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    test = table.Column<string>(type: "text", nullable: false),
                    package_sha256 = table.Column<string>(type: "text", nullable: false),
                    method_edition = table.Column<string>(type: "text", nullable: false),
                    procedure_edition = table.Column<string>(type: "text", nullable: false),
                    runtime = table.Column<string>(type: "text", nullable: false),
                    commit = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    what = table.Column<string>(type: "text", nullable: false),
                    why = table.Column<string>(type: "text", nullable: true),
                    valid = table.Column<bool>(type: "boolean", nullable: false),
                    problem_count = table.Column<int>(type: "integer", nullable: false),
                    flags = table.Column<string>(type: "jsonb", nullable: false),
                    document = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_reduction", x => x.id);
                    table.ForeignKey(
                        name: "fk_reduction_package_package_sha256",
                        column: x => x.package_sha256,
                        principalSchema: "lab",
                        principalTable: "package",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "structural_point",
                schema: "lab",
                columns: table => new
                {
                    package_sha256 = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    role = table.Column<string>(type: "text", nullable: false),
                    pre_x = table.Column<double>(type: "double precision", nullable: true),
                    pre_y = table.Column<double>(type: "double precision", nullable: true),
                    pre_z = table.Column<double>(type: "double precision", nullable: true),
                    post_x = table.Column<double>(type: "double precision", nullable: true),
                    post_y = table.Column<double>(type: "double precision", nullable: true),
                    post_z = table.Column<double>(type: "double precision", nullable: true),
                    line = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_structural_point", x => new { x.package_sha256, x.number });
                    table.ForeignKey(
                        name: "fk_structural_point_package_package_sha256",
                        column: x => x.package_sha256,
                        principalSchema: "lab",
                        principalTable: "package",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "channel_flag_withdrawal",
                schema: "lab",
                columns: table => new
                {
                    flag_id = table.Column<long>(type: "bigint", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_channel_flag_withdrawal", x => x.flag_id);
                    table.ForeignKey(
                        name: "fk_channel_flag_withdrawal_channel_flag_flag_id",
                        column: x => x.flag_id,
                        principalSchema: "lab",
                        principalTable: "channel_flag",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "measure",
                schema: "lab",
                columns: table => new
                {
                    reduction_id = table.Column<long>(type: "bigint", nullable: false),
                    ordinal = table.Column<int>(type: "integer", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: true),
                    value = table.Column<double>(type: "double precision", nullable: true),
                    unit = table.Column<string>(type: "text", nullable: false),
                    from_s = table.Column<double>(type: "double precision", nullable: true),
                    to_s = table.Column<double>(type: "double precision", nullable: true),
                    absent = table.Column<string>(type: "text", nullable: true),
                    at_least = table.Column<double>(type: "double precision", nullable: true),
                    at_most = table.Column<double>(type: "double precision", nullable: true),
                    bounds_because = table.Column<string>(type: "text", nullable: true),
                    filter_class = table.Column<int>(type: "integer", nullable: true),
                    detail = table.Column<string>(type: "text", nullable: true),
                    uncertainty = table.Column<double>(type: "double precision", nullable: true),
                    method_edition = table.Column<string>(type: "text", nullable: false),
                    sources = table.Column<string[]>(type: "text[]", nullable: false),
                    bias = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_measure", x => new { x.reduction_id, x.ordinal });
                    table.ForeignKey(
                        name: "fk_measure_reduction_row_reduction_id",
                        column: x => x.reduction_id,
                        principalSchema: "lab",
                        principalTable: "reduction",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "rating",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    reduction_id = table.Column<long>(type: "bigint", nullable: false),
                    scheme = table.Column<string>(type: "text", nullable: false),
                    valid = table.Column<bool>(type: "boolean", nullable: false),
                    overall = table.Column<string>(type: "text", nullable: true),
                    not_rated = table.Column<string>(type: "text", nullable: true),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    document = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_rating", x => x.id);
                    table.ForeignKey(
                        name: "fk_rating_reduction_reduction_id",
                        column: x => x.reduction_id,
                        principalSchema: "lab",
                        principalTable: "reduction",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "current_rating",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    test = table.Column<string>(type: "text", nullable: false),
                    rating_id = table.Column<long>(type: "bigint", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_current_rating", x => x.id);
                    table.ForeignKey(
                        name: "fk_current_rating_rating_row_rating_id",
                        column: x => x.rating_id,
                        principalSchema: "lab",
                        principalTable: "rating",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_current_rating_test_run_test",
                        column: x => x.test,
                        principalSchema: "lab",
                        principalTable: "test_run",
                        principalColumn: "test",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.InsertData(
                schema: "lab",
                table: "vehicle_class",
                columns: new[] { "key", "title" },
                values: new object[,]
                {
                    { "compact-electric", "Compact electric cars" },
                    { "crew-cab-pickup", "Crew-cab pickups" },
                    { "delivery-van", "Light delivery vans" }
                });

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                schema: "lab",
                table: "account",
                column: "normalized_email");

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                schema: "lab",
                table: "account",
                column: "normalized_user_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_account_claim_user_id",
                schema: "lab",
                table: "account_claim",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_account_login_user_id",
                schema: "lab",
                table: "account_login",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_account_role_role_id",
                schema: "lab",
                table: "account_role",
                column: "role_id");

            migrationBuilder.CreateIndex(
                name: "ix_audit_entity",
                schema: "lab",
                table: "audit",
                column: "entity");

            migrationBuilder.CreateIndex(
                name: "ix_channel_package_sha256_code",
                schema: "lab",
                table: "channel",
                columns: new[] { "package_sha256", "code" });

            migrationBuilder.CreateIndex(
                name: "ix_channel_flag_package_sha256",
                schema: "lab",
                table: "channel_flag",
                column: "package_sha256");

            migrationBuilder.CreateIndex(
                name: "ix_channel_flag_test",
                schema: "lab",
                table: "channel_flag",
                column: "test");

            migrationBuilder.CreateIndex(
                name: "ix_current_rating_rating_id",
                schema: "lab",
                table: "current_rating",
                column: "rating_id");

            migrationBuilder.CreateIndex(
                name: "ix_current_rating_test_id",
                schema: "lab",
                table: "current_rating",
                columns: new[] { "test", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_measure_code",
                schema: "lab",
                table: "measure",
                column: "code");

            migrationBuilder.CreateIndex(
                name: "ix_package_test",
                schema: "lab",
                table: "package",
                column: "test");

            migrationBuilder.CreateIndex(
                name: "ix_rating_reduction_id",
                schema: "lab",
                table: "rating",
                column: "reduction_id");

            migrationBuilder.CreateIndex(
                name: "ix_reduction_package_sha256",
                schema: "lab",
                table: "reduction",
                column: "package_sha256");

            migrationBuilder.CreateIndex(
                name: "ix_reduction_test",
                schema: "lab",
                table: "reduction",
                column: "test");

            migrationBuilder.CreateIndex(
                name: "RoleNameIndex",
                schema: "lab",
                table: "role",
                column: "normalized_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_role_claim_role_id",
                schema: "lab",
                table: "role_claim",
                column: "role_id");

            migrationBuilder.CreateIndex(
                name: "ix_test_run_repeat_of",
                schema: "lab",
                table: "test_run",
                column: "repeat_of");

            migrationBuilder.CreateIndex(
                name: "ix_test_run_vehicle_key",
                schema: "lab",
                table: "test_run",
                column: "vehicle_key");

            migrationBuilder.CreateIndex(
                name: "ix_token_hash",
                schema: "lab",
                table: "token",
                column: "hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_token_name",
                schema: "lab",
                table: "token",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_vehicle_class_key",
                schema: "lab",
                table: "vehicle",
                column: "class_key");

            migrationBuilder.CreateIndex(
                name: "ix_vehicle_twin_twin_key",
                schema: "lab",
                table: "vehicle_twin",
                column: "twin_key",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "account_claim",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "account_login",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "account_role",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "account_token",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "audit",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "channel",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "channel_flag_withdrawal",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "clearance",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "current_rating",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "data_protection_key",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "finding",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "measure",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "package_chunk",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "release",
                schema: "pub");

            migrationBuilder.DropTable(
                name: "role_claim",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "structural_point",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "token",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "vehicle_twin",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "account",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "channel_flag",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "rating",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "role",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "reduction",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "package",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "test_run",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "vehicle",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "vehicle_class",
                schema: "lab");
        }
    }
}
