using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Toepan.Api.Store.Migrations
{
    /// <inheritdoc />
    public partial class Reviews : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "historic_origin",
                schema: "lab",
                columns: table => new
                {
                    kind = table.Column<string>(type: "text", nullable: false),
                    key = table.Column<string>(type: "text", nullable: false),
                    batch_id = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_historic_origin", x => new { x.kind, x.key });
                });

            migrationBuilder.CreateTable(
                name: "result_batch",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    tests = table.Column<int>(type: "integer", nullable: false),
                    values = table.Column<int>(type: "integer", nullable: false),
                    codes = table.Column<string[]>(type: "text[]", nullable: false),
                    replaces = table.Column<long>(type: "bigint", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_result_batch", x => x.id);
                    table.ForeignKey(
                        name: "fk_result_batch_result_batch_replaces",
                        column: x => x.replaces,
                        principalSchema: "lab",
                        principalTable: "result_batch",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "review_act",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    test = table.Column<string>(type: "text", nullable: false),
                    rating_id = table.Column<long>(type: "bigint", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    part = table.Column<string>(type: "text", nullable: true),
                    concern = table.Column<string>(type: "text", nullable: true),
                    note = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_review_act", x => x.id);
                    table.ForeignKey(
                        name: "fk_review_act_rating_rating_id",
                        column: x => x.rating_id,
                        principalSchema: "lab",
                        principalTable: "rating",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_review_act_test_run_test",
                        column: x => x.test,
                        principalSchema: "lab",
                        principalTable: "test_run",
                        principalColumn: "test",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "result_withdrawal",
                schema: "lab",
                columns: table => new
                {
                    batch_id = table.Column<long>(type: "bigint", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_result_withdrawal", x => x.batch_id);
                    table.ForeignKey(
                        name: "fk_result_withdrawal_result_batch_batch_id",
                        column: x => x.batch_id,
                        principalSchema: "lab",
                        principalTable: "result_batch",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "summary_measure",
                schema: "lab",
                columns: table => new
                {
                    batch_id = table.Column<long>(type: "bigint", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    value = table.Column<double>(type: "double precision", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_summary_measure", x => new { x.batch_id, x.code, x.number, x.position });
                    table.ForeignKey(
                        name: "fk_summary_measure_result_batch_batch_id",
                        column: x => x.batch_id,
                        principalSchema: "lab",
                        principalTable: "result_batch",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "summary_run",
                schema: "lab",
                columns: table => new
                {
                    batch_id = table.Column<long>(type: "bigint", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    test = table.Column<string>(type: "text", nullable: false),
                    vehicle_key = table.Column<string>(type: "text", nullable: false),
                    procedure = table.Column<string>(type: "text", nullable: false),
                    date = table.Column<DateOnly>(type: "date", nullable: true),
                    model_year = table.Column<int>(type: "integer", nullable: true),
                    test_mass_kg = table.Column<double>(type: "double precision", nullable: true),
                    digest = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_summary_run", x => new { x.batch_id, x.number });
                    table.ForeignKey(
                        name: "fk_summary_run_result_batch_batch_id",
                        column: x => x.batch_id,
                        principalSchema: "lab",
                        principalTable: "result_batch",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_summary_run_vehicle_vehicle_key",
                        column: x => x.vehicle_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "review_withdrawal",
                schema: "lab",
                columns: table => new
                {
                    act_id = table.Column<long>(type: "bigint", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_review_withdrawal", x => x.act_id);
                    table.ForeignKey(
                        name: "fk_review_withdrawal_review_act_act_id",
                        column: x => x.act_id,
                        principalSchema: "lab",
                        principalTable: "review_act",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "summary_occupant",
                schema: "lab",
                columns: table => new
                {
                    batch_id = table.Column<long>(type: "bigint", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    dummy = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_summary_occupant", x => new { x.batch_id, x.number, x.position });
                    table.ForeignKey(
                        name: "fk_summary_occupant_summary_run_batch_id_number",
                        columns: x => new { x.batch_id, x.number },
                        principalSchema: "lab",
                        principalTable: "summary_run",
                        principalColumns: new[] { "batch_id", "number" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_result_batch_replaces",
                schema: "lab",
                table: "result_batch",
                column: "replaces");

            migrationBuilder.CreateIndex(
                name: "ix_review_act_rating_id",
                schema: "lab",
                table: "review_act",
                column: "rating_id");

            migrationBuilder.CreateIndex(
                name: "ix_review_act_test",
                schema: "lab",
                table: "review_act",
                column: "test");

            migrationBuilder.CreateIndex(
                name: "ix_summary_measure_batch_id_number",
                schema: "lab",
                table: "summary_measure",
                columns: new[] { "batch_id", "number" });

            migrationBuilder.CreateIndex(
                name: "ix_summary_run_test",
                schema: "lab",
                table: "summary_run",
                column: "test");

            migrationBuilder.CreateIndex(
                name: "ix_summary_run_vehicle_key",
                schema: "lab",
                table: "summary_run",
                column: "vehicle_key");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "historic_origin",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "result_withdrawal",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "review_withdrawal",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "summary_measure",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "summary_occupant",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "review_act",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "summary_run",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "result_batch",
                schema: "lab");
        }
    }
}
